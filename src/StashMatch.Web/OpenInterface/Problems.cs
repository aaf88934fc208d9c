using StashMatch.Store;

namespace StashMatch.Web.OpenInterface;

/// <summary>Field errors as RFC 9457 problem details.</summary>
public static class Problems
{
    private const int MostFields = 100;

    public static IResult Problem(this FieldErrors errors) => Problem(errors, "Some fields cannot be read.", StatusCodes.Status400BadRequest);

    /// <summary>What was asked is well said, but does not go with what is there now.</summary>
    public static IResult Conflict(this FieldErrors errors, string title) => Problem(errors, title, StatusCodes.Status409Conflict);

    /// <summary>What was asked is well said, and still not to be done.</summary>
    public static IResult Unprocessable(this FieldErrors errors, string title) => Problem(errors, title, StatusCodes.Status422UnprocessableEntity);

    private static IResult Problem(FieldErrors errors, string title, int status) => Results.ValidationProblem(
        errors.ByField.OrderBy(e => e.Key, StringComparer.Ordinal).Take(MostFields).ToDictionary(e => e.Key, e => e.Value, StringComparer.Ordinal),
        title: title,
        statusCode: status);
}
