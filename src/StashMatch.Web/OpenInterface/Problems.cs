using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>Field errors as RFC 9457 problem details.</summary>
public static class Problems
{
    private const int MostFields = 100;

    public static IResult Problem(this FieldErrors errors) => Results.ValidationProblem(
        errors.ByField.OrderBy(e => e.Key, StringComparer.Ordinal).Take(MostFields).ToDictionary(e => e.Key, e => e.Value, StringComparer.Ordinal),
        title: "Some fields cannot be read as they stand.");
}
