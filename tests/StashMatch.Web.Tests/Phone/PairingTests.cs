using Microsoft.Extensions.DependencyInjection;
using StashMatch.Store.Data;
using StashMatch.Web.Phone;
using Xunit;

namespace StashMatch.Web.Tests.Phone;

public sealed class PairingTests
{
    [Fact]
    public void A_code_is_six_digits_good_for_ten_minutes_and_the_next_one_replaces_it()
    {
        var clock = new Clock();
        var code = new PairingCode(clock);
        Assert.False(code.IsShown);
        Assert.False(code.TryUse(""));
        var first = code.Show();
        Assert.Matches("^[0-9]{6}$", first);
        string second;
        do
        {
            second = code.Show();
        }
        while (second == first);
        Assert.False(code.TryUse(first));
        clock.Now += PairingCode.GoodFor;
        Assert.False(code.IsShown);
        Assert.False(code.TryUse(second));
        clock.Now -= PairingCode.GoodFor;
        Assert.False(code.TryUse(second));
    }

    [Fact]
    public void Phones_are_remembered_past_a_restart_and_a_revoked_one_is_not()
    {
        var folder = Directory.CreateTempSubdirectory("stashmatch-phones-").FullName;
        var place = new StorePlace(folder);
        var phones = new PairedPhones(place, TimeProvider.System);
        var (kept, gone) = (phones.Pair(new string('x', 90)), phones.Pair("  "));
        Assert.Equal((PairedPhones.MostName, "a phone"), (kept.Name.Length, gone.Name));
        var cut = 0;
        using (phones.Hold(gone.Id, () => cut++))
        using (phones.Hold(kept.Id, () => cut += 100))
        {
            Assert.True(phones.Revoke(gone.Id));
        }

        Assert.Equal(1, cut);
        Assert.False(phones.Revoke(gone.Id));
        var later = new PairedPhones(place, TimeProvider.System);
        Assert.True(later.IsPaired(kept.Id));
        Assert.False(later.IsPaired(gone.Id));
        File.WriteAllText(Path.Combine(folder, "keys", "phones.json"), "{ half a");
        Assert.Empty(new PairedPhones(place, TimeProvider.System).List());
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public void The_door_is_shut_unless_somebody_opens_it()
    {
        using var app = new HomeApp();
        Assert.False(app.Services.GetRequiredService<PhoneDoor>().Open);
    }

    private sealed class Clock : TimeProvider
    {
        public DateTimeOffset Now { get; set; } = new(2026, 11, 25, 18, 0, 0, TimeSpan.Zero);

        public override DateTimeOffset GetUtcNow() => Now;
    }
}
