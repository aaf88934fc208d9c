using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace StashMatch.Web.Phone;

/// <summary>The one code being shown: six digits, good once, for ten minutes and five tries. It is kept nowhere but here.</summary>
public sealed class PairingCode(TimeProvider clock)
{
    /// <summary>How long a code is good.</summary>
    public static readonly TimeSpan GoodFor = TimeSpan.FromMinutes(10);

    /// <summary>How often it may be mistyped.</summary>
    public const int MostTries = 5;

    private readonly Lock _lock = new();
    private string? _code;
    private DateTimeOffset _until;
    private int _tries;

    /// <summary>Makes a new code; the one before is good no more.</summary>
    public string Show()
    {
        lock (_lock)
        {
            _code = RandomNumberGenerator.GetInt32(1_000_000).ToString("000000", CultureInfo.InvariantCulture);
            (_until, _tries) = (clock.GetUtcNow() + GoodFor, 0);
            return _code;
        }
    }

    /// <summary>Whether a code is being shown and still good.</summary>
    public bool IsShown
    {
        get
        {
            lock (_lock)
            {
                return _code is not null && clock.GetUtcNow() < _until;
            }
        }
    }

    /// <summary>Uses the code up if this is it.</summary>
    public bool TryUse(string? typed)
    {
        var digits = string.Concat((typed ?? "").Where(c => !char.IsWhiteSpace(c)).Take(20));
        lock (_lock)
        {
            if (_code is null || clock.GetUtcNow() >= _until)
            {
                _code = null;
                return false;
            }

            var right = CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(digits), Encoding.UTF8.GetBytes(_code));
            if (right || ++_tries >= MostTries)
            {
                _code = null;
            }

            return right;
        }
    }
}
