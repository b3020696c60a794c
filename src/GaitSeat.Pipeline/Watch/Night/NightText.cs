using System.Globalization;

namespace GaitSeat.Pipeline.Watch.Night;

/// <summary>The sections of a summary as plain cells; <see cref="NightMarkdown"/> and <see cref="NightHtml"/> only put them on the page.</summary>
internal static class NightText
{
    public static string Title(NightSummary s) => string.Create(CultureInfo.InvariantCulture, $"Night of {s.Night:yyyy-MM-dd}: {s.Season}");

    public static string Lead(NightSummary s) => string.Create(CultureInfo.InvariantCulture,
        $"{s.Count(NightEnd.Measured)} clips measured, {s.Flagged.Count()} of them flagged, {s.Count(NightEnd.SetAside)} set aside, {s.Waiting} still waiting.");

    public static IEnumerable<Section> Sections(NightSummary s)
    {
        yield return new("In figures", ["", ""], [.. Figures(s)], "");
        if (s.Notes.Count > 0) yield return new("To know", ["Note"], [.. s.Notes.Select(n => new[] { n })], "");
        yield return new("Flagged", ["Clip", "Finding"], [.. s.Flagged.SelectMany(e => e.Flags.Select(f => new[] { e.ClipFile, f }))], "No clip was flagged.");
        yield return new("Set aside", ["Reason", "Clip", "What was found"], Reasons(s.SetAside), "No clip was set aside.");
        yield return new("Put off, tried again later", ["Reason", "Clip", "What was found"], Reasons(s.PutOff), "No clip was put off.");
        yield return new("The ten slowest", ["Clip", "Took", "Frames", "Tried again"], [.. s.TenSlowest.Select(e => new[] { e.ClipFile, Duration(TimeSpan.FromSeconds(e.Seconds)), Number(e.Frames), Number(e.Retries) })], "No clip was worked on.");
    }

    /// <summary>Text of strangers on one line: line breaks, control characters and those that turn the direction of writing become blanks.</summary>
    public static string Tame(string text) => string.Concat(text.Select(c => IsWild(c) ? ' ' : c));

    private static bool IsWild(char c) =>
        char.IsControl(c) || char.GetUnicodeCategory(c) is UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;

    private static IEnumerable<string[]> Figures(NightSummary s)
    {
        yield return ["Window", s.Window];
        yield return ["Measured", Number(s.Count(NightEnd.Measured))];
        yield return ["Flagged", Number(s.Flagged.Count())];
        yield return ["Set aside", string.Join(", ", s.SetAside.Select(g => $"{g.Count()} {g.Key}").DefaultIfEmpty("0"))];
        yield return ["Done before", Number(s.Count(NightEnd.AlreadyDone))];
        yield return ["Without consent", Number(s.Count(NightEnd.NoConsent))];
        yield return ["Put off", Number(s.Count(NightEnd.PutOff))];
        yield return ["Still waiting", Number(s.Waiting)];
        yield return ["Strides", Number(s.Strides)];
        yield return ["Frames", Number(s.Frames)];
        yield return ["Tried again", Number(s.Retries)];
        yield return ["From first to last", Duration(s.Span)];
        yield return ["Time on clips, all workers", Duration(s.Worked)];
        yield return ["Written", s.Written.ToString("yyyy-MM-dd HH:mm zzz", CultureInfo.InvariantCulture)];
    }

    private static string[][] Reasons(IEnumerable<IGrouping<string, NightEntry>> groups) =>
        [.. groups.SelectMany(g => g.Select(e => new[] { g.Key, e.ClipFile, e.Detail ?? "" }))];

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Duration(TimeSpan time) => string.Create(CultureInfo.InvariantCulture, $"{(int)time.TotalHours} h {time.Minutes:00} min {time.Seconds:00} s");
}

/// <param name="Heads">Column heads; empty ones are not shown.</param>
/// <param name="Nothing">What stands there when there are no rows.</param>
internal sealed record Section(string Title, string[] Heads, string[][] Rows, string Nothing);
