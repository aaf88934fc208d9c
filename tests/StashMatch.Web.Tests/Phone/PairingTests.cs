using Microsoft.Extensions.DependencyInjection;
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
    public void Revoking_cuts_the_lines_of_that_phone_alone_and_only_while_they_are_open()
    {
        var lines = new PhoneLines();
        var (one, other) = (Guid.NewGuid(), Guid.NewGuid());
        var cut = 0;
        using (lines.Hold(other, () => cut += 100))
        {
            using (lines.Hold(one, () => cut++))
            {
                lines.Cut(one);
            }

            lines.Cut(one);
        }

        Assert.Equal(1, cut);
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
