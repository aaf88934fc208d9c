namespace StashMatch.Knitting.Matching.Search;

/// <content>Braid strands that are all alike: any two that may touch make a braid, so they are paired at once instead of braid by braid.</content>
internal sealed partial class Arranger
{
    private Found PairStrands()
    {
        var c = _puzzle.Items[_pairs[0].A].Class;
        var opened = new List<int>();
        for (var k = 0; k < _of[c].Length; k++)
        {
            var slot = _of[c][k];
            if (_left[c][k] > 0 && _binOfSlot[slot] < 0)
            {
                _binOfSlot[slot] = LeastCrowded(_slots[slot].Members, c);
                opened.Add(slot);
            }
        }

        var tokens = Tokens(c);
        var found = Crowded(tokens) ? (opened.Count == 0 ? Found.No : Found.Unknown) : Halves(tokens) ? Found.Yes : Found.Unknown;
        if (found == Found.Yes)
        {
            for (var i = 0; i < _pairs.Count; i++)
            {
                (_binOf[_pairs[i].A], _binOf[_pairs[i].B]) = (tokens[i], tokens[i + _pairs.Count]);
            }
        }
        else
        {
            opened.ForEach(s => _binOfSlot[s] = -1);
        }

        return found;
    }

    // Of equal leftovers not in use the one whose colour the strands settled so far show least.
    private int LeastCrowded(int[] members, int c)
    {
        var (best, least) = (-1, int.MaxValue);
        foreach (var member in members)
        {
            if (Array.IndexOf(_binOfSlot, member) >= 0)
            {
                continue;
            }

            var crowd = 0;
            for (var k = 0; k < _of[c].Length; k++)
            {
                var other = _binOfSlot[_of[c][k]];
                crowd += other >= 0 && !_puzzle.MayTouch(other, member) ? _left[c][k] : 0;
            }

            (best, least) = crowd < least ? (member, crowd) : (best, least);
        }

        return best;
    }

    // A leftover for each strand, those that may not touch next to each other, the most first; -1 for strands left uncovered.
    private int[] Tokens(int c)
    {
        var left = new List<(int Bin, int Many)>();
        for (var k = 0; k < _of[c].Length; k++)
        {
            if (_left[c][k] > 0)
            {
                left.Add((_binOfSlot[_of[c][k]], _left[c][k]));
            }
        }

        left.Sort((a, b) => a.Many != b.Many ? b.Many.CompareTo(a.Many) : a.Bin.CompareTo(b.Bin));
        var (tokens, at) = (new int[2 * _pairs.Count], 0);
        Array.Fill(tokens, -1);
        while (left.Count > 0)
        {
            var first = left.MaxBy(l => (left.Where(o => o.Bin == l.Bin || !_puzzle.MayTouch(o.Bin, l.Bin)).Sum(o => o.Many), -l.Bin));
            foreach (var like in left.Where(o => o.Bin == first.Bin || !_puzzle.MayTouch(o.Bin, first.Bin)).ToList())
            {
                Array.Fill(tokens, like.Bin, at, like.Many);
                at += like.Many;
                left.Remove(like);
            }
        }

        return tokens;
    }

    // More strands of leftovers no two of which may touch than there are braids.
    private bool Crowded(int[] tokens)
    {
        foreach (var first in tokens.Where(t => t >= 0).Distinct())
        {
            var crowd = new List<int> { first };
            var many = 0;
            foreach (var token in tokens)
            {
                if (token >= 0 && crowd.TrueForAll(o => o == token || !_puzzle.MayTouch(o, token)))
                {
                    many++;
                    if (!crowd.Contains(token))
                    {
                        crowd.Add(token);
                    }
                }
            }

            if (many > _pairs.Count && !_puzzle.Question.Blend)
            {
                return true;
            }
        }

        return false;
    }

    // The first half beside the second; a pair that may not touch changes partners with one that lets both.
    private bool Halves(int[] tokens)
    {
        var half = _pairs.Count;
        bool May(int a, int b) => a < 0 || b < 0 || _puzzle.MayTouch(a, b);
        for (var i = 0; i < half; i++)
        {
            if (May(tokens[i], tokens[i + half]))
            {
                continue;
            }

            var mended = false;
            for (var j = 0; !mended && j < half; j++)
            {
                if (i != j && May(tokens[i], tokens[j + half]) && May(tokens[j], tokens[i + half]))
                {
                    (tokens[i + half], tokens[j + half]) = (tokens[j + half], tokens[i + half]);
                    mended = true;
                }
                else if (i != j && May(tokens[i], tokens[j]) && May(tokens[i + half], tokens[j + half]))
                {
                    (tokens[i + half], tokens[j]) = (tokens[j], tokens[i + half]);
                    mended = true;
                }
            }

            if (!mended)
            {
                return false;
            }
        }

        return true;
    }
}
