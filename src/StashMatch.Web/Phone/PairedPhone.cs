namespace StashMatch.Web.Phone;

/// <summary>A browser that was let in.</summary>
/// <param name="Id">What its cookie carries.</param>
/// <param name="Name">What its owner calls it, 1 to 40 characters.</param>
/// <param name="PairedAt">When it was let in.</param>
public sealed record PairedPhone(Guid Id, string Name, DateTimeOffset PairedAt);
