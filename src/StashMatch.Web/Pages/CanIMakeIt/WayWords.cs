using StashMatch.Knitting.Hats;
using StashMatch.Knitting.Matching;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages.CanIMakeIt;

/// <summary>What a way to a better answer says on its tag: a few words, no sentence.</summary>
public static class WayWords
{
    public static string Short(Repair repair, AnswerView view)
    {
        ArgumentNullException.ThrowIfNull(repair);
        ArgumentNullException.ThrowIfNull(view);
        string Name(string? id) => view.Words.Name(id);
        return repair.Code switch
        {
            RepairCode.MoveOne => $"{Name(repair.Leftover)} for {Words.The(repair.Part!)}",
            RepairCode.LeaveOut => $"Leave out {Name(repair.Leftover)}",
            RepairCode.FewerStripes => CanIMakeItWords.OfStripes($"{repair.Stripes}"),
            RepairCode.FewerRows => $"{repair.RowsMoved} {(repair.RowsMoved == 1 ? "row" : "rows")} fewer in {repair.Part}",
            RepairCode.RePairBraid => $"Other yarn in {repair.Part}",
            RepairCode.DropBraid => $"Leave out {repair.Part}",
            RepairCode.JoinNearMatch => $"{Name(repair.Leftover)} and {Name(repair.OtherLeftover)} in one part",
            RepairCode.ShallowerBrim => $"Brim {Shown.OwnDepth(repair.BrimDepth!.Value)} deep{Not(view)}",
            RepairCode.AnotherArrangement => Terms.Capital(Words.Of(repair.Arrangement!.Value)),
            RepairCode.Blend => "Let neighbours look alike",
            RepairCode.UnfoldBrim => "Single brim, not folded",
            RepairCode.SmallerSize => $"Size {repair.Size}",
            RepairCode.ThriftierBindOff => repair.BindOff == EdgeKind.Tubular ? "Tubular bind-off" : "Plain bind-off",
            RepairCode.WeighSwatch => "Weigh a swatch",
            _ => repair.BuyMiniSkeins is { } minis ? $"Buy {CanIMakeItWords.Counted(minis, "mini-skein")}" : $"Buy {repair.BuyGrams} g",
        };
    }

    /// <summary>The same where there is little room: two words or three.</summary>
    public static string Shortest(Repair repair, AnswerView view)
    {
        ArgumentNullException.ThrowIfNull(repair);
        return repair.Code switch
        {
            RepairCode.ShallowerBrim => $"Brim {Shown.OwnDepth(repair.BrimDepth!.Value)}",
            RepairCode.UnfoldBrim => "Single brim",
            RepairCode.MoveOne => $"Use {view.Words.Name(repair.Leftover)}",
            RepairCode.Blend => "Let them blend",
            RepairCode.JoinNearMatch => "Join two balls",
            RepairCode.FewerRows => "Move some rows",
            RepairCode.AnotherArrangement when repair.Arrangement == Arrangement.OneThread => "One braid colour",
            RepairCode.AnotherArrangement when repair.Arrangement == Arrangement.OwnColours => "All different",
            _ => Short(repair, view),
        };
    }

    private static string Not(AnswerView view) => view.Answer.Hat.Plan is { } plan ? $", not {Shown.OwnDepth(plan.BrimDepth).Split(' ')[0]}" : "";
}
