using System.Globalization;
using System.Text;

namespace GaitSeat.Store;

/// <summary>The data card, <c>README.md</c> of the compacted copy: how the data was made, of whom, what it cannot say, what may be done with it.</summary>
internal static class DataCard
{
    internal const string FileName = "README.md";

    internal static string ToMarkdown(DatasetFacts facts)
    {
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"# {facts.About.TitleOrNot}\n\n{Description.Of(facts)}\n\n");
        page.Append("Made from the dataset by `gaitseat compact`; every count below was taken from the files beside this page.\n");
        Section(page, "What is in it", Contents(facts));
        Section(page, "How it was made", Making(facts));
        Section(page, "Population", Riders(facts.Population));
        Section(page, "What was left out", LeftOut(facts));
        Section(page, "Limits", Limits);
        Section(page, "Privacy", Privacy(facts.Population));
        Section(page, "Licence", Licence(facts.About));
        Section(page, "Files", Files);
        return page.ToString();
    }

    private static void Section(StringBuilder page, string title, string text) => page.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n{text.ReplaceLineEndings("\n").Trim()}\n");

    private static string Contents(DatasetFacts facts)
    {
        var table = new StringBuilder("| table | rows | |\n|---|---|---|\n");
        foreach (var t in facts.Filled) table.Append(CultureInfo.InvariantCulture, $"| `{t.Table.Name}` | {t.Rows} | {t.Table.About} |\n");
        return table.Append("\nColumns, units, definitions and what a null means: [data-dictionary.md](data-dictionary.md); their spread: `column-statistics.csv`.").ToString();
    }

    private static string Making(DatasetFacts facts)
    {
        var text = new StringBuilder(
            """
            Riding clips filmed from the side were measured by GaitSeat: horse and rider found, body points followed by two models, the trunk of the horse taken as anchor by optical flow,
            rising trot cut into strides from sit to sit, each stride measured. Nobody corrected the numbers by hand. Each number stands with its standard error, which covers what the program
            knows of its own errors. Lengths in centimetres rest on the rider's size in the session sheet; without it they are in percent of leg length. Stirrup lengths (`leather_cm`,
            `stirrup_hole`) are what the sheet says, not measured.

            | settings (`pipeline_hash`) | models (`model_hash`) | program | clips |
            |---|---|---|---|

            """.ReplaceLineEndings("\n"));
        foreach (var run in facts.Runs) text.Append(CultureInfo.InvariantCulture, $"| `{run.PipelineHash[..Math.Min(12, run.PipelineHash.Length)]}` | `{run.ModelHash[..Math.Min(12, run.ModelHash.Length)]}` | {run.SoftwareVersion} | {run.Clips} |\n");
        if (facts.Runs.Select(r => (r.PipelineHash, r.ModelHash)).Distinct().Count() > 1) text.Append("\n**Rows of several runs stand beside each other: the same strides measured with other settings or models. Pick one `pipeline_hash` and `model_hash` before you count.**\n");
        return text.ToString();
    }

    private static string Riders(Population p) => string.Create(
        CultureInfo.InvariantCulture,
        $"""
        {p.Riders} riders, {p.Horses} horses, {p.Sessions} sessions (one rider on one horse on one day), {p.ClipsMeasured} clips measured, {p.Strides} strides; {Days(p)}; seasons: {(p.Seasons.Count > 0 ? string.Join(", ", p.Seasons) : "not named")}.
        Who was filmed, why and how they came to be filmed is not recorded by the program: it is no sample of riders at large. Strides of one rider, one horse and one day are alike,
        so the number of riders, not of strides, says how much can be concluded.
        """);

    private static string Days(Population p) => p is { First: { } first, Last: { } last } ? $"{first:yyyy-MM-dd} to {last:yyyy-MM-dd}" : "no day is given";

    private static string LeftOut(DatasetFacts facts)
    {
        var text = new StringBuilder(string.Create(CultureInfo.InvariantCulture, $"{facts.Population.ClipsSetAside} clips could not be measured. Clips without consent are not here at all, and are not counted. Nothing else was left out without a reason in `skipped`:\n\n"));
        if (facts.LeftOut.Count == 0) return text.Append("nothing.").ToString();
        text.Append("| of | reason | count |\n|---|---|---|\n");
        foreach (var l in facts.LeftOut) text.Append(CultureInfo.InvariantCulture, $"| {l.Scope} | `{l.Reason}` | {l.Count} |\n");
        return text.Append("\nWhat is left out is not left out at random: riders turned away from the camera, small in the picture or hidden are missing more often.").ToString();
    }

    private const string Limits =
        """
        - Truth for real rising trot cannot be had from footage alone. The program's errors were measured on made clips with known truth; its documentation (docs/accuracy.md) gives them, with what is not covered.
        - A standard error covers chance and the errors the program knows of. An error common to all strides of a clip (wrong stature, camera not level) does not average out over strides.
        - The data is observational. That riders with other stirrups rise otherwise does not say that changing stirrups would change their rise: size, skill, horse and purpose go with stirrup length.
        - Findings are prompts for a coach's eye, not verdicts, and no diagnosis. Nothing here is advice to change anyone's stirrups.
        - Measures of the side away from the camera, of walk, canter and sitting trot are not in `strides`.
        """;

    private static string Privacy(Population p)
    {
        var text =
            """
            Riders and horses are pseudonyms given in the session sheet; the key from pseudonym to name is not here, and keeping it apart is up to who holds it. There are no pictures here. All the
            same these are data of people, often children: sizes of the body, days, places of a yard and the way of moving can tell who someone is. Consent was asked for being filmed and measured;
            whether it covers handing the data on is for the holder to know. `clip_file`, `note` and `extra` hold free text from the yard: **read them before you hand the data on**, or hand on
            `gaitseat export parquet` or `csv`, which leave them out and ask for consent to exports. When a rider takes consent back, the clip is erased from the dataset and from this copy.
            """;
        return p.ClipsWithoutSheet == 0 ? text : text + string.Create(CultureInfo.InvariantCulture, $"\n\n{p.ClipsWithoutSheet} clips have no row in a session sheet, so no consent is on record for them. Exports leave them out.");
    }

    private static string Licence(DatasetAbout about) => about.Licence is null
        ? $"No licence was given. Without one nothing may be done with the data but by leave of its creator ({about.CreatorOrNot})."
        : $"{about.Licence} ({about.LicenceUrl}), by {about.CreatorOrNot}." + (about.Url is { } url ? $" From {url}." : "");

    private const string Files =
        """
        Parquet with Zstandard, `table/season=…/rider=…/table.parquet`; season and rider stand in the folders' names and not in the files (Hive partitions), percent-encoded, `__HIVE_DEFAULT_PARTITION__`
        where the sheet has none. Read both as text. Rows are sorted by day, horse, clip and place in the clip. `datapackage.json` (Frictionless Data Package) and `croissant.json` (Croissant 1.1)
        describe the same for programs. Files whose names begin with `_` are the program's own.
        """;
}
