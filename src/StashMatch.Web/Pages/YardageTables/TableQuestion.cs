using StashMatch.Knitting.Designing;
using StashMatch.Store;

namespace StashMatch.Web.Pages.YardageTables;

/// <summary>Fetches what a table is made of.</summary>
public sealed class TableQuestion(HatStore hats, TesterStore testers, KnitterStore knitter)
{
    /// <summary>The view asked for, or null with a message for each field that cannot be read.</summary>
    public async Task<TableView?> AskAsync(TableForm form, FieldErrors errors, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(form);
        var hat = await hats.FindAsync(form.Hat, cancel);
        var view = form.Read(hat, await testers.JudgeAsync(form.Hat, hat, cancel), errors);
        return view is not null && await knitter.OfHatAsync(form.Hat, cancel) is { SwitchedOff: false } taken && TestersUse.MayTakeOver(view.Hat) ? view.With(taken) : view;
    }
}
