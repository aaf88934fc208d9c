using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;

namespace StashMatch.Web.Tests.Pages;

/// <summary>Who looks on: nobody named, as at home, until a test says otherwise.</summary>
public sealed class Onlooker : AuthenticationStateProvider
{
    public ClaimsPrincipal Now { get; set; } = new(new ClaimsIdentity());

    public override Task<AuthenticationState> GetAuthenticationStateAsync() => Task.FromResult(new AuthenticationState(Now));
}
