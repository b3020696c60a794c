using System.Globalization;
using GaitSeat.Faults.Flags;
using GaitSeat.Faults.Teaching;
using GaitSeat.Model;
using GaitSeat.Pipeline.Season;
using GaitSeat.Store;
using GaitSeat.Study.Plots;

namespace GaitSeat.Pipeline.Pupil;

/// <summary>What a report is made from.</summary>
/// <param name="Spells">Every spell of the run.</param>
/// <param name="Flags">What the tool flagged, of any rider.</param>
/// <param name="Standing">Verdicts that stand.</param>
/// <param name="ClipFolder">Where clips and sheet lie: without the sheet nobody's consent to a report is known.</param>
/// <param name="Through">The last day of the week meant; null for the rider's last.</param>
public sealed record PupilRequest(
    string Rider, IReadOnlyList<RiddenSpell> Spells, IReadOnlyList<Flag> Flags, IReadOnlyList<Verdict> Standing, TeachingOrder Order, IReadOnlyDictionary<Fault, ExerciseCard> Cards,
    string ClipFolder, DateOnly? Through, DateOnly Today);

/// <summary>The page, and what it shows, for the audit log.</summary>
public sealed record PupilResult(string Html, IReadOnlyList<string> ClipKeys, IReadOnlyList<string> Notes);

/// <summary>Makes the report for one rider: what was seen in a week, how two or three measures go, and one thing to work on first.</summary>
public static class PupilReport
{
    private const int DaysOfAWeek = 7;

    /// <param name="pictures">Makes the pictures of a clip around a second; null to leave pictures out.</param>
    /// <exception cref="SeasonException">There is no such rider, no consent, or nothing measured.</exception>
    public static async Task<PupilResult> MakeAsync(PupilRequest request, Func<string, double, CancellationToken, Task<PupilPictures>>? pictures, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(request);
        var sheet = SeasonSheet.Of(request.ClipFolder, request.Today);
        var own = request.Spells.Where(s => s.Rider == request.Rider).ToArray();
        if (own.Length == 0) throw new SeasonException($"there is no rider '{request.Rider}' in the dataset");
        var gaps = own.Select(s => (Spell: s, Gap: Against(sheet, s.Provenance.ClipFile))).ToArray();
        RiddenSpell[] may = [.. gaps.Where(g => g.Gap is null && g.Spell.SessionDate is not null).Select(g => g.Spell)];
        if (may.Length == 0) throw new SeasonException($"no clip of '{request.Rider}' may be reported", [.. gaps.Select(g => g.Gap?.Sentence ?? "the sheet names no day").Distinct(StringComparer.Ordinal)]);
        var notes = new List<string>();
        var hidden = gaps.Where(g => g.Gap is not null).Select(g => g.Spell.Provenance.ClipKey).Distinct(StringComparer.Ordinal).Count();
        if (hidden > 0) notes.Add(string.Create(CultureInfo.InvariantCulture, $"{hidden} clips are left out: {string.Join("; ", gaps.Select(g => g.Gap?.Sentence).OfType<string>().Distinct(StringComparer.Ordinal))}"));

        var last = may.Where(s => request.Through is null || s.SessionDate <= request.Through).Select(s => s.SessionDate!.Value).DefaultIfEmpty().Max();
        if (last == default) throw new SeasonException($"nothing was measured of '{request.Rider}' up to {request.Through:yyyy-MM-dd}");
        var from = last.AddDays(1 - DaysOfAWeek);
        RiddenSpell[] past = [.. may.Where(s => s.SessionDate <= last)];
        RiddenSpell[] week = [.. past.Where(s => s.SessionDate >= from)];
        var task = FirstTask.Of(request.Flags, week.Select(s => s.Key).ToHashSet(), request.Standing, request.Order, request.Cards);
        var progress = ProgressWords.Of(past, from);
        var made = await PicturesAsync(request, week, task, pictures, notes, ct);
        var stills = new (string Caption, byte[]? Jpeg)[] { ("As you sit", made?.Sit), ("At the top of the rise", made?.Top) };
        var html = PupilPage.Write(new(
            request.Rider, week.Min(s => s.SessionDate!.Value), last, Seen(week, task), made?.Mp4, made is null ? "There are no pictures this time." : null,
            [.. stills.Where(s => s.Jpeg is not null).Select(s => (s.Caption, s.Jpeg!))], progress, Plot(progress), task));
        return new(html, [.. past.Select(s => s.Provenance.ClipKey).Distinct(StringComparer.Ordinal)], notes);
    }

    private static ConsentGap? Against(SeasonSheet sheet, string clipFile) =>
        sheet.RowOf(clipFile) is { } row ? row.Against(ConsentUse.Report) : new("no_consent_on_record", "the clip has no row in the session sheet, so nobody's consent is known");

    private static string[] Seen(RiddenSpell[] week, FirstTask? task)
    {
        var rising = week.Where(s => s.Spell.Gait == Gait.RisingTrot).ToArray();
        var strides = rising.Sum(s => s.Strides.Count(x => x.IsTrusted));
        var seconds = rising.Sum(s => s.Spell.EndSeconds - s.Spell.StartSeconds);
        var clips = week.Select(s => s.Provenance.ClipKey).Distinct(StringComparer.Ordinal).Count();
        var days = week.Select(s => s.SessionDate).Distinct().Count();
        var what = string.Create(CultureInfo.InvariantCulture, $"{Count(clips, "clip")} on {Count(days, "day")}, with {seconds:0} seconds of rising trot. {Count(strides, "stride")} could be measured well.");
        return task is null ? [what] : [what, $"The pictures show the moment the first exercise below is about. They are there to talk over with your coach, not to judge you or your horse."];
    }

    private static string Count(int count, string word) => string.Create(CultureInfo.InvariantCulture, $"{count} {word}{(count == 1 ? "" : "s")}");

    /// <summary>Of the clip the task was seen in, else of the one with the most strides. A clip that is gone or was replaced gives none.</summary>
    private static async Task<PupilPictures?> PicturesAsync(PupilRequest request, RiddenSpell[] week, FirstTask? task, Func<string, double, CancellationToken, Task<PupilPictures>>? pictures, List<string> notes, CancellationToken ct)
    {
        if (pictures is null) return null;
        var spell = task?.Flag.Spell ?? week.OrderByDescending(s => s.Strides.Count(x => x.IsTrusted)).ThenBy(s => s.Key).First();
        var (file, key) = (spell.Provenance.ClipFile, spell.Provenance.ClipKey);
        var path = Path.Combine(request.ClipFolder, Path.GetFileName(file));
        if (!File.Exists(path) || await ClipKey.OfFileAsync(path, ct) != key)
        {
            notes.Add($"no pictures: '{file}' is not in '{request.ClipFolder}', or is another file than the one that was measured");
            return null;
        }

        try
        {
            return await pictures(path, task?.Flag.StartSeconds ?? spell.Spell.StartSeconds, ct);
        }
        catch (ClipSetAsideException e)
        {
            notes.Add($"no pictures: {e.Message}");
            return null;
        }
    }

    private static string? Plot(IReadOnlyList<Progress> progress)
    {
        if (progress is not [var first, ..]) return null;
        var folder = Directory.CreateTempSubdirectory("gaitseat-report-").FullName;
        try
        {
            var path = Path.Combine(folder, "plot.svg");
            ProgressPlot.SaveSvg($"{first.Title}, {first.Unit}", [.. first.Days.Select(d => (d.Day, d.Value))], path);
            return File.ReadAllText(path);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
