using System.Security.Claims;
using System.Security.Cryptography;
using Microsoft.AspNetCore.DataProtection;

namespace StashMatch.Web.Phone;

/// <summary>The signed cookie a paired browser carries.</summary>
public sealed class PhoneCookie(IDataProtectionProvider protection)
{
    /// <summary>The cookie's name.</summary>
    public const string Name = "stashmatch-phone";

    private const string Claim = "phone";

    private readonly IDataProtector _seal = protection.CreateProtector("StashMatch.PairedPhone");

    /// <summary>Gives the cookie. The home network has no certificates, so it cannot be bound to a secure line.</summary>
    public void Give(HttpResponse response, Guid phone)
    {
        ArgumentNullException.ThrowIfNull(response);
        response.Cookies.Append(Name, _seal.Protect(phone.ToString("N")), new CookieOptions
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Lax,
            MaxAge = TimeSpan.FromDays(180),
            IsEssential = true,
        });
    }

    /// <summary>The phone a request says it comes from, if the seal is whole.</summary>
    public Guid? Of(HttpRequest request)
    {
        ArgumentNullException.ThrowIfNull(request);
        try
        {
            return request.Cookies[Name] is { Length: > 0 and < 1000 } sealedId && Guid.TryParseExact(_seal.Unprotect(sealedId), "N", out var id) ? id : null;
        }
        catch (CryptographicException)
        {
            return null;
        }
    }

    /// <summary>Who the request is from then on, on its page and in its circuit.</summary>
    public static ClaimsPrincipal Person(Guid id) => new(new ClaimsIdentity([new Claim(Claim, id.ToString("N"))], Claim));

    /// <summary>Whether somebody looks on from a paired phone rather than from this machine.</summary>
    public static bool IsPhone(ClaimsPrincipal person)
    {
        ArgumentNullException.ThrowIfNull(person);
        return person.HasClaim(c => c.Type == Claim);
    }
}
