using System.Globalization;

namespace GaitSeat.Store;

/// <summary>A row of any table: it belongs to a clip.</summary>
internal interface IClipRow
{
    ClipRecord Clip { get; }
}

/// <summary>Columns that stand in several tables.</summary>
internal static class SharedColumns
{
    private const string NotInSheet = "Not in the session sheet.";

    /// <summary>Which clip a row belongs to; first in every table.</summary>
    internal static IEnumerable<Column<TRow>> Clip<TRow>()
        where TRow : IClipRow =>
    [
        Columns.Text<TRow>("clip_key", "SHA-256 of the clip's bytes, lower-case hex.", r => r.Clip.Provenance.ClipKey),
        Columns.Text<TRow>("clip_file", "File name of the clip within its folder.", r => r.Clip.Provenance.ClipFile),
    ];

    /// <summary>How a row was made; last in every table.</summary>
    internal static IEnumerable<Column<TRow>> Provenance<TRow>()
        where TRow : IClipRow =>
    [
        Columns.Text<TRow>("pipeline_hash", "SHA-256 over every setting that can change a number.", r => r.Clip.Provenance.PipelineHash),
        Columns.Text<TRow>("model_hash", "SHA-256 over names and hashes of the models in use.", r => r.Clip.Provenance.ModelHash),
        Columns.Text<TRow>("software_version", "Version of the program that wrote the row.", r => r.Clip.Provenance.SoftwareVersion),
        Columns.Whole<TRow>("schema_version", "", "Version of the layout of the tables.", r => r.Clip.Provenance.SchemaVersion),
    ];

    /// <summary>What the session sheet says of a clip.</summary>
    internal static IEnumerable<Column<TRow>> Session<TRow>()
        where TRow : IClipRow =>
    [
        Columns.Date<TRow>("session_date", "Day of the session.", r => r.Clip.Session?.SessionDate, NotInSheet),
        Columns.Text<TRow>("season", "Season as the sheet names it, else the year of the session.", r => SeasonOf(r.Clip), NotInSheet),
        Columns.Text<TRow>("rider", "Pseudonym of the rider.", r => r.Clip.Session?.Rider, NotInSheet),
        Columns.Text<TRow>("horse", "Pseudonym of the horse.", r => r.Clip.Session?.Horse, NotInSheet),
        Columns.Text<TRow>("rein", "`left` or `right`.", r => r.Clip.Session?.Rein, NotInSheet),
        Columns.Real<TRow>("stirrup_hole", "hole", "Hole of the stirrup leather, counted as the sheet counts.", r => r.Clip.Session?.StirrupHole, NotInSheet),
        Columns.Real<TRow>("leather_cm", "cm", "Length of the stirrup leather from bar to tread.", r => r.Clip.Session?.LeatherCm, NotInSheet),
    ];

    private static string? SeasonOf(ClipRecord clip) =>
        clip.Session?.Season ?? clip.Session?.SessionDate?.Year.ToString(CultureInfo.InvariantCulture);
}
