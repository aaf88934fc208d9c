namespace StashMatch.Knitting.Matching;

/// <summary>Whether an item may come from a leftover, everything placed so far considered, metres aside.</summary>
internal sealed class Rules(Puzzle puzzle)
{
    public bool Admit(Item item, int bin, int[] binOf)
    {
        if (!puzzle.Classes[item.Class].Fits[bin] || !puzzle.Beside[item.Index].TrueForAll(n => binOf[n] < 0 || puzzle.MayTouch(bin, binOf[n])))
        {
            return false;
        }

        if (!puzzle.OwnColours || item.Role == Role.Free)
        {
            return true;
        }

        return !Array.Exists(puzzle.Items, other => other.Index != item.Index && binOf[other.Index] == bin
            && (other.Role == Role.Stripe || (other.Role == Role.Head && item.Role == Role.Stripe)));
    }
}
