using System.Globalization;
using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Knitting.Yarns;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>What the address asks; values as typed, so that nothing is lost where one cannot be read.</summary>
public sealed record CanIMakeForm
{
    private static readonly Field ChosenFor = Field.Text("choose");
    private static readonly Field KeptToo = Field.Word("kept", CountKept);
    private static readonly Field Shown = Field.Word("share", "uses-up-most", "gentlest");

    private Said _asked = Said.Nothing;

    /// <summary>What is asked, by the names of <see cref="MatchQuestion"/>.</summary>
    public Said Asked { get => _asked; init => _asked = value; }

    public string? Hat { get => One(MatchQuestion.Hat); init => Set(MatchQuestion.Hat, value); }

    public string? Size { get => One(MatchQuestion.Size); init => Set(MatchQuestion.Size, value); }

    public string? Stripes { get => One(MatchQuestion.Stripes); init => Set(MatchQuestion.Stripes, value); }

    public string? Arrangement { get => One(MatchQuestion.Arrangement); init => Set(MatchQuestion.Arrangement, value); }

    public string? Allowance { get => One(MatchQuestion.AllowancePercent); init => Set(MatchQuestion.AllowancePercent, value); }

    public string? NextDoor { get => One(MatchQuestion.NextDoor); init => Set(MatchQuestion.NextDoor, value); }

    public string? Brim { get => One(ChangedHat.Brim); init => Set(ChangedHat.Brim, value); }

    /// <summary>Rows of each stripe, "28,30,29"; empty for equal stripes.</summary>
    public string? Depths
    {
        get => Several(ChangedHat.Rows) is { Count: > 0 } rows ? string.Join(',', rows) : null; init =>
        Set(ChangedHat.Rows, value is { Length: > 0 } ? [value] : []);
    }

    /// <summary>The brim's depth in centimetres, where it is not the hat's own.</summary>
    public string? BrimDepth { get => One(ChangedHat.BrimDepthCm); init => Set(ChangedHat.BrimDepthCm, value); }

    /// <summary>How the edge is worked, where it is not as the hat says.</summary>
    public string? BindOff { get => One(ChangedHat.BindOff); init => Set(ChangedHat.BindOff, value); }

    /// <summary>Numbers of braids left out.</summary>
    public IReadOnlyList<string> Without { get => Several(ChangedHat.Without); init => Set(ChangedHat.Without, value); }

    /// <summary>Parts cut out of what they would be one with.</summary>
    public IReadOnlyList<string> Apart { get => Several(Pairings.Apart); init => Set(Pairings.Apart, value); }

    /// <summary>Leftovers knitted one after the other, as an address spells them.</summary>
    public IReadOnlyList<string> Join { get => Several(Together.Joined); init => Set(Together.Joined, value); }

    /// <summary>How many leftovers take turns.</summary>
    public string? InTurn { get => One(MatchQuestion.InTurn); init => Set(MatchQuestion.InTurn, value); }

    /// <summary>How the stripes are ordered by colour.</summary>
    public string? Colours { get => One(MatchQuestion.ColourOrder); init => Set(MatchQuestion.ColourOrder, value); }

    /// <summary>One bag of leftovers; empty for all.</summary>
    public string? Bag { get => One(MatchQuestion.Bag); init => Set(MatchQuestion.Bag, value); }

    /// <summary>Which fibres may go in; empty for any.</summary>
    public string? Fibres { get => One(MatchQuestion.Fibres); init => Set(MatchQuestion.Fibres, value); }

    /// <summary>Leftovers that do not go into this hat.</summary>
    public IReadOnlyList<string> Back { get => Several(MatchQuestion.Back); init => Set(MatchQuestion.Back, value); }

    public IReadOnlyList<string> Leftovers { get => Several(MatchQuestion.Leftovers); init => Set(MatchQuestion.Leftovers, value); }

    /// <summary>The leftover to be held with another; empty for none.</summary>
    public string? Hold { get => HeldTogether.ElementAtOrDefault(0); init => SetHeld(value, HoldWith); }

    /// <summary>What it is held with; empty for itself.</summary>
    public string? HoldWith { get => HeldTogether is [var first, var second] && second != first ? second : null; init => SetHeld(Hold, value); }

    /// <summary>The plan whose question is asked again: its own yarn counts as free.</summary>
    public string? Plan { get => One(MatchQuestion.Plan); init => Set(MatchQuestion.Plan, value); }

    /// <summary>The part another leftover is being chosen for; no link carries it on.</summary>
    public string? Choose { get; init; }

    /// <summary>Always this leftover in that part, as an address spells it: part and leftover id, joined by a tilde.</summary>
    public IReadOnlyList<string> Keep { get => Several(Pairings.Locks); init => Set(Pairings.Locks, value); }

    /// <summary>Something else than this leftover in that part, spelled likewise.</summary>
    public IReadOnlyList<string> Never { get => Several(Pairings.Never); init => Set(Pairings.Never, value); }

    /// <summary>The plan seen before, spelled likewise: of plans as good the one is taken that changes least of it.</summary>
    public IReadOnlyList<string> Like { get => Several(Pairings.Like); init => Set(Pairings.Like, value); }

    /// <summary>Which plan of the answer is shown, "uses-up-most" or "gentlest"; empty for the surest.</summary>
    public string? Share { get; init; }

    /// <summary>The same, read.</summary>
    public PlanKind Shared => Share switch { "uses-up-most" => PlanKind.UsesMostUp, "gentlest" => PlanKind.Evenest, _ => PlanKind.Surest };

    /// <summary>The value of <see cref="Kept"/> that counts it.</summary>
    public const string CountKept = "count";

    /// <summary>"count" where yarn kept for other plans counts too; empty otherwise.</summary>
    public string? Kept { get; init; }

    /// <summary>What the page opens with when nothing is asked yet.</summary>
    public static CanIMakeForm First { get; } = new() { Hat = "side-to-side-sample", Size = "F", Stripes = "6" };

    /// <summary>What is asked, with the opening's hat, size and count where the address names none of the three.</summary>
    public CanIMakeForm OrFirst() => Hat is null && Size is null && Stripes is null
        ? this with { Hat = First.Hat, Size = First.Size, Stripes = First.Stripes }
        : this with { Hat = Hat ?? First.Hat, Size = Size ?? First.Size };

    /// <summary>What an address asks.</summary>
    public static CanIMakeForm Of(IQueryCollection query)
    {
        ArgumentNullException.ThrowIfNull(query);
        return new CanIMakeForm
        {
            Asked = MatchQuestion.InAddress(query.Pairs()),
            Choose = query[ChosenFor.Name],
            Share = query[Shown.Name],
            Kept = query[KeptToo.Name],
        }.OrFirst();
    }

    /// <summary>The address of the answer as one picture.</summary>
    public string Picture() => SaidInAddress.Of("/can-i-make.png", Pairs());

    /// <summary>The address that asks a changed question.</summary>
    public string Address(Func<CanIMakeForm, CanIMakeForm> change)
    {
        ArgumentNullException.ThrowIfNull(change);
        return SaidInAddress.Of("/can-i-make", change(this).Pairs());
    }

    /// <summary>What is asked, name by name.</summary>
    public IEnumerable<(string Name, string Value)> Pairs() =>
        SaidInAddress.Write(Asked, MatchQuestion.Fields).Concat(string.IsNullOrEmpty(Kept) ? [] : [(KeptToo.Name, Kept)])
            .Concat(string.IsNullOrEmpty(Share) ? [] : [(Shown.Name, Share)]);

    /// <summary>Leftovers asked about as one, joined or held together: what they are known by, and which they are.</summary>
    public IEnumerable<(string Id, IReadOnlyList<string> Of)> Several() => Together.Named(Asked);

    /// <summary>The address that always uses a leftover for a part and works the rest out again.</summary>
    public string KeepHere(string part, string leftover) => Address(f => f.KeepHereIn(part, leftover));

    /// <summary>The address that gives the part another leftover.</summary>
    public string NotThisOne(string part, string leftover) => Address(f => f.NotHere(part, leftover));

    /// <summary>The address that leaves a leftover out of this hat.</summary>
    public string KeepBack(string leftover) => Address(f => f.LeaveOut(leftover));

    /// <summary>The question with a leftover always used for a part.</summary>
    public CanIMakeForm KeepHereIn(string part, string leftover) =>
        Decide(Pairings.Locks, part, Pairings.Say(part, leftover))
            .Having(Pairings.Never, Each(Pairings.Never).Where(n => Pairings.PartOf(n) != part || Pairings.LeftoverOf(n) != leftover))
            with
        { Back = [.. Back.Where(b => b != leftover)] };

    /// <summary>The question with a leftover never used for a part.</summary>
    public CanIMakeForm NotHere(string part, string leftover) => Decide(Pairings.Locks, part).Decide(Pairings.Never, null, Pairings.Say(part, leftover));

    /// <summary>The question without a leftover.</summary>
    public CanIMakeForm LeaveOut(string leftover) =>
        Having(Pairings.Locks, Each(Pairings.Locks).Where(l => Pairings.LeftoverOf(l) != leftover)) with { Back = [.. Back, leftover] };

    /// <summary>The question with nothing decided about a part, nor about the letter it is knitted from.</summary>
    public CanIMakeForm Undecided(string part, string? letter) => Decide(Pairings.Locks, part).Decide(Pairings.Locks, letter ?? part);

    /// <summary>The question asked so that the plan shown changes as little as can be, at its own count of stripes.</summary>
    public CanIMakeForm As(AnswerView shown)
    {
        ArgumentNullException.ThrowIfNull(shown);
        return Having(Pairings.Like, shown.Parts.Where(p => p.From is not null).Select(p => Pairings.Say(p.Part.Name, p.From!.Leftover))) with
        {
            Share = null,
            Stripes = shown.Answer.Hat.Plan is null ? Stripes : shown.Answer.Hat.Stripes.ToString(CultureInfo.InvariantCulture),
        };
    }

    /// <summary>The leftover each part had in the plan seen before, by the part's name.</summary>
    public IReadOnlyDictionary<string, string> Before =>
        Each(Pairings.Like).GroupBy(Pairings.PartOf, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => Pairings.LeftoverOf(g.First()), StringComparer.Ordinal);

    /// <summary>The address of the hat alone, painted.</summary>
    /// <param name="view">"head" or "above".</param>
    /// <param name="turn">Sixths of a turn.</param>
    /// <param name="width">Pixels.</param>
    /// <param name="key">What the picture is known by.</param>
    public string HatPicture(string view, int turn, int width, string key) => SaidInAddress.Of(
        "/hat.png",
        (this with { Like = [] }).Pairs()
            .Concat([("view", view), ("turn", turn.ToString(CultureInfo.InvariantCulture)), ("width", width.ToString(CultureInfo.InvariantCulture)),
                ("seen", key)]));

    /// <summary>How an address names one of an answer's plans; null for the surest.</summary>
    public static string? NameOf(PlanKind kind) => kind switch { PlanKind.UsesMostUp => "uses-up-most", PlanKind.Evenest => "gentlest", _ => null };

    /// <summary>The address of the same question with the leftovers for a part to choose from.</summary>
    public string ChooseFor(string part) => SaidInAddress.Of("/can-i-make", Pairs().Append((ChosenFor.Name, part)));

    /// <summary>The address without what the knitter decided about a part.</summary>
    public string PutBack(string part) => Address(f => f.Decide(Pairings.Locks, part).Decide(Pairings.Never, part));

    /// <summary>Whether the knitter has decided something about a part.</summary>
    public bool IsDecided(string part) => Each(Pairings.Locks).Concat(Each(Pairings.Never)).Any(d => Pairings.PartOf(d) == part);

    /// <summary>
    /// The address that tries a repair of an answer with so many stripes; null for one done away from the page. A repair of one part holds at that
    /// count.
    /// </summary>
    public string? Try(Repair repair, int stripes)
    {
        ArgumentNullException.ThrowIfNull(repair);
        if (repair.Code is RepairCode.MoveOne or RepairCode.DropBraid or RepairCode.RePairBraid or RepairCode.JoinNearMatch
            && string.IsNullOrEmpty(Stripes))
        {
            return (this with { Stripes = stripes.ToString(CultureInfo.InvariantCulture) }).Try(repair, stripes);
        }

        return repair.Code switch
        {
            RepairCode.FewerStripes => Address(f => f with { Stripes = $"{repair.Stripes}", Depths = null }),
            RepairCode.AnotherArrangement =>
                Address(f => f with { Arrangement = Names.Of(repair.Arrangement!.Value), InTurn = repair.InTurn?.ToString(CultureInfo.InvariantCulture) }),
            RepairCode.Blend => Address(f => f with { NextDoor = "blend" }),
            RepairCode.SmallerSize => Address(f => f with { Size = repair.Size, Depths = null }),
            RepairCode.UnfoldBrim => Address(f => f with { Brim = "single" }),
            RepairCode.ShallowerBrim => Address(f => f with { BrimDepth = repair.BrimDepth!.Value.Value.ToString("0.##", CultureInfo.InvariantCulture) }),
            RepairCode.ThriftierBindOff => Address(f => f with { BindOff = Names.Of(repair.BindOff!.Value) }),
            RepairCode.FewerRows => Address(f => f with { Depths = string.Join(',', repair.Rows!), Stripes = $"{repair.Rows!.Count}" }),
            RepairCode.DropBraid => Address(f => f with { Without = [.. f.Without, repair.Part!.Split(' ')[^1]], Depths = null }),
            RepairCode.RePairBraid => Address(f => f with { Apart = [.. f.Apart, .. "ab".Select(s => $"{repair.Part} strand {s}")] }),
            RepairCode.JoinNearMatch => Address(f => f with { Join = [.. f.Join, SaidInAddress.Together(repair.Leftover!, repair.OtherLeftover!)] }),
            RepairCode.MoveOne => KeepHere(repair.Part!, repair.Leftover!),
            _ => null,
        };
    }

    /// <summary>The question, or null with a message for each field that cannot be read.</summary>
    public Question? Read(Hat? hat, IReadOnlyList<Leftover> bag, FieldErrors errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var asked = new Reading(Asked, errors);
        if (hat is not null)
        {
            return MatchQuestion.Read(asked, hat, bag, Habits.Now.AllowancePercent);
        }

        asked.Wrong(MatchQuestion.Hat, "is not one of the hats here");
        return null;
    }

    private IReadOnlyList<string> HeldTogether =>
        Each(Together.Held) is [var first, ..] ? [.. (first[Together.Of].Each ?? []).Select(o => o.Words ?? "")] : [];

    private IReadOnlyList<Said> Each(Field field) => Asked[field].Each ?? [];

    private IReadOnlyList<string> Several(Field field) => [.. Each(field).Select(e => SaidInAddress.Spell(e, field))];

    private string? One(Field field) => Asked[field].Words;

    private void Set(Field field, string? value) => _asked = _asked.With(field, value);

    private void Set(Field field, IReadOnlyList<string> values) => _asked = _asked.With(field, SaidInAddress.Read(field, values));

    private void SetHeld(string? first, string? second) =>
        _asked = _asked.With(Together.Held, string.IsNullOrEmpty(first) ? Said.Nothing
            : Said.Several([Together.Say(first, string.IsNullOrEmpty(second) ? first : second)]));

    private CanIMakeForm Having(Field field, IEnumerable<Said> each) =>
        this with { Asked = Asked.With(field, each.ToList() is { Count: > 0 } some ? Said.Several(some) : Said.Nothing) };

    private CanIMakeForm Decide(Field field, string? part, params IEnumerable<Said> instead) =>
        Having(field, [.. Each(field).Where(d => Pairings.PartOf(d) != part), .. instead]);
}
