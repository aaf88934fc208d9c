using StashMatch.Store;

namespace StashMatch.Web.Pages.YardageTables;

/// <summary>Fetches what a table is made of.</summary>
public sealed class TableQuestion(HatStore hats, TesterStore testers)
{
    /// <summary>The view asked for, or null with a message for each field that cannot be read.</summary>
    public async Task<TableView?> AskAsync(TableForm form, FieldErrors errors, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(form);
        var hat = await hats.FindAsync(form.Hat, cancel);
        return form.Read(hat, await testers.JudgeAsync(form.Hat, hat, cancel), errors);
    }
}
