namespace StashMatch.Pictures;

/// <summary>Paints a hat as wool. The same hat and view give the same bytes.</summary>
public static class WoolPicture
{
    /// <summary>The picture as a PNG of at most 256 tones on a transparent ground; about 40 KB at 440 pixels.</summary>
    /// <param name="hat">The hat.</param>
    /// <param name="view">From where, and how large.</param>
    /// <param name="threads">On how many threads; 1 unless somebody waits for it.</param>
    public static byte[] Png(WoolHat hat, WoolView view, int threads = 1)
    {
        var sheet = Paint(hat, view, threads);
        return WoolTones.Png(sheet, hat.Yarns.Sum(y => y.Colours.Count));
    }

    internal static WoolSheet Paint(WoolHat hat, WoolView view, int threads = 1)
    {
        ArgumentNullException.ThrowIfNull(hat);
        ArgumentNullException.ThrowIfNull(view);
        view.Check();
        const int fine = 2;
        var form = new WoolForm(hat);
        var meshes = WoolMesh.Of(form, hat, Rough(form, view));
        var frame = WoolFrame.Of(meshes, view);
        var samples = new WoolSamples(meshes, view, frame, fine);
        var sheet = new WoolSheet(frame.Width, frame.Height);
        sheet.Paint(hat, form, view, frame, samples, fine, threads);
        var edge = new WoolEdge(hat, sheet, frame, samples, fine);
        edge.Blend();
        edge.Fibres(meshes);
        edge.Soften();
        return sheet;
    }

    // Pixels to a centimetre, near enough to choose how fine the form is cut.
    internal static double Rough(WoolForm form, WoolView view) => view.PerCm ?? view.Width / (2.3 * form.Radius);
}
