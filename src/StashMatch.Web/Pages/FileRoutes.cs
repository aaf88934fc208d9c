using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using StashMatch.Store;
using StashMatch.Web.Pieces;

namespace StashMatch.Web.Pages;

/// <summary>What pages hand out as files.</summary>
public static class FileRoutes
{
    private const string Csv = "text/csv; charset=utf-8";

    public static void MapFiles(this IEndpointRouteBuilder app)
    {
        ArgumentNullException.ThrowIfNull(app);
        app.MapGet("/tables.csv", (HttpRequest request, YardageTables.TableQuestion question, Habits habits, CancellationToken cancel) =>
            TableAsync(request, question, habits, "csv", Csv, YardageTables.TableCsv.Write, cancel)).ExcludeFromDescription();
        app.MapGet("/tables.txt", (HttpRequest request, YardageTables.TableQuestion question, Habits habits, CancellationToken cancel) =>
            TableAsync(request, question, habits, "txt", "text/plain; charset=utf-8", v =>
                string.Join('\n', YardageTables.TableLines.Of(v)) + "\n", cancel)).ExcludeFromDescription();
        app.MapGet("/can-i-make.png", PictureAsync).ExcludeFromDescription();
        app.MapGet("/hat.png", HatPictureAsync).ExcludeFromDescription();
        app.MapGet("/testers.csv", SheetAsync).ExcludeFromDescription();
        app.MapGet("/hats/{id}.json", HatAsync).ExcludeFromDescription();
        app.MapGet("/plans/{id}/share", ShareAsync).ExcludeFromDescription();
    }

    private static async Task<IResult> TableAsync(
        HttpRequest request, YardageTables.TableQuestion question, Habits habits, string ending, string type, Func<YardageTables.TableView,
            string> write, CancellationToken cancel)
    {
        habits.Enter();
        await habits.ReadAsync(cancel);
        var errors = new FieldErrors();
        var view = await question.AskAsync(YardageTables.TableForm.Of(request.Query), errors, cancel);
        return view is null ? Wrong(errors) : File(write(view), type, $"{Slug(view.Hat.Name)}-table.{ending}");
    }

    // The picture shows what is in the bag now, so it is nobody else's to keep and is asked for afresh.
    private static async Task<IResult> PictureAsync(HttpContext context, CanIMakeIt.HatQuestion question, Habits habits, CancellationToken cancel)
    {
        habits.Enter();
        await habits.ReadAsync(cancel);
        var errors = new FieldErrors();
        var asked = await question.AskAsync(CanIMakeIt.CanIMakeForm.Of(context.Request.Query), errors, cancel);
        context.Response.Headers.CacheControl = "private, no-cache";
        return asked switch
        {
            { Cannot: { } cannot } =>
                Results.Text($"This cannot be knitted. {cannot.Reason}\n", "text/plain; charset=utf-8", statusCode: StatusCodes.Status400BadRequest),
            { View: { } view } => Results.File(CanIMakeIt.AnswerCard.Png(view), "image/png"),
            _ => Wrong(errors),
        };
    }

    // The hat alone, as wool. An address that names what is seen may be kept for good; where that picture is gone the question is asked again.
    private static async Task<IResult> HatPictureAsync(HttpContext context, CanIMakeIt.HatQuestion question, HatPictures pictures, CancellationToken cancel)
    {
        const int least = 40;
        const int most = 1200;
        var query = context.Request.Query;
        string? seen = query["seen"];
        if (await pictures.FindAsync(seen) is { } kept)
        {
            context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
            return Results.File(kept, "image/png");
        }

        var form = CanIMakeIt.CanIMakeForm.Of(query);
        var errors = new FieldErrors();
        var asked = await question.AskAsync(form, errors, cancel);
        if (asked.View is not { } view)
        {
            return asked.Cannot is { } cannot
                ? Results.Text($"{cannot.Reason}\n", "text/plain; charset=utf-8", statusCode: StatusCodes.Status400BadRequest) : Wrong(errors);
        }

        var turn = int.TryParse(query["turn"], System.Globalization.NumberStyles.AllowLeadingSign, System.Globalization.CultureInfo.InvariantCulture, out var t) ? t % 6 : 0;
        var width = int.TryParse(query["width"], System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var w) ? Math.Clamp(w, least, most) : 456;
        var look = HatPictures.ViewOf(query["view"] == "above" ? "above" : "head", turn, width);
        context.Response.Headers.CacheControl = HatPictures.KeyOf(view.Wool, look) == seen ? "private, max-age=31536000, immutable" : "private, no-cache";
        return Results.File(await pictures.PngAsync(view.Wool, look), "image/png");
    }

    private static async Task<IResult> SheetAsync(HttpRequest request, HatStore hats, CancellationToken cancel)
    {
        var errors = new FieldErrors();
        var (id, size, stripes) = ((string?)request.Query["hat"] ?? "", (string?)request.Query["size"] ?? "", (string?)request.Query["stripes"] ?? "");
        var sheet = TesterResults.Sheet.Of(id, await hats.FindAsync(id, cancel), size, stripes, errors);
        return sheet is null ? Wrong(errors) : File(TesterResults.SheetCsv.Write(sheet), Csv, $"{Slug(sheet.Hat.Name)}-{Slug(size)}-tester.csv");
    }

    private static async Task<IResult> HatAsync(string id, HatStore hats, CancellationToken cancel) =>
        (await hats.ListAsync(cancel)).FirstOrDefault(h => h.Id == id) is { } hat
            ? File(HatFile.Write(hat.Description), "application/json; charset=utf-8", $"{Slug(hat.Hat.Name)}.json")
            : Results.Text("No hat has that id.", statusCode: StatusCodes.Status404NotFound);

    private static async Task<IResult> ShareAsync(
        string id, PlanStore plans, LeftoverStore leftovers, HatStore hats, IWebHostEnvironment web, HtmlRenderer renderer, Habits habits,
            CancellationToken cancel)
    {
        habits.Enter();
        await habits.ReadAsync(cancel);
        if (await KnittingSheet.SheetView.LoadAsync(id, plans, leftovers, hats, cancel) is not { } view)
        {
            return Results.Text("No plan has that id.", statusCode: StatusCodes.Status404NotFound);
        }

        using var style = new StreamReader(web.WebRootFileProvider.GetFileInfo("css/sheet.css").CreateReadStream());
        var parameters = ParameterView.FromDictionary(new Dictionary<string, object?>(StringComparer.Ordinal)
        {
            [nameof(KnittingSheet.ShareSheet.View)] = view,
            [nameof(KnittingSheet.ShareSheet.Style)] = await style.ReadToEndAsync(cancel),
        });
        var html = await renderer.Dispatcher.InvokeAsync(async () =>
            (await renderer.RenderComponentAsync<KnittingSheet.ShareSheet>(parameters)).ToHtmlString());
        return File(html, "text/html; charset=utf-8", $"{Slug(view.Plan.Name)}.html");
    }

    private static IResult Wrong(FieldErrors errors) => Results.Text(
        string.Join('\n', errors.ByField.Select(e => Pieces.Shown.Sentence(CalledBy(e.Key), e.Value[0]))) + "\n", "text/plain; charset=utf-8", statusCode: StatusCodes.Status400BadRequest);

    private static string CalledBy(string field) => MatchQuestion.Fields.Concat(TableQuestion.Fields).FirstOrDefault(f => field.Split('.', '[')[0] == f.Name)?.Called ?? field;

    private static IResult File(string text, string type, string name) => Results.File(System.Text.Encoding.UTF8.GetBytes(text), type, name);

    private static string Slug(string name)
    {
        var plain = new string([.. name.ToLowerInvariant().Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-').Take(60)]).Trim('-');
        while (plain.Contains("--", StringComparison.Ordinal))
        {
            plain = plain.Replace("--", "-", StringComparison.Ordinal);
        }

        return plain.Length == 0 ? "hat" : plain;
    }
}
