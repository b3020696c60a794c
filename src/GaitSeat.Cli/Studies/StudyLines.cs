using GaitSeat.Study.Answers;
using GaitSeat.Study.Report;

namespace GaitSeat.Cli.Studies;

/// <summary>What a study came to, for a terminal.</summary>
internal static class StudyLines
{
    private const string Caution = "Observational: what goes together need not be cause and effect. Not advice to change anyone's stirrups; the report says what cannot be concluded.";

    public static void Write(AnsiConsoles consoles, IReadOnlyList<StudyResult> results, string folder)
    {
        foreach (var line in StudyReport.Summary(results)) consoles.RawOut.WriteLine(line);
        consoles.RawOut.WriteLine(Caution);
        consoles.RawOut.WriteLine($"report: {Path.Combine(folder, StudyReport.HtmlName)}, {StudyReport.MarkdownName}, {NumbersFile.FileName}");
    }

    /// <summary>Done where every question has an answer; a report is written in any case.</summary>
    public static int ExitCodeOf(IReadOnlyList<StudyResult> results)
    {
        var answers = results.SelectMany(r => r.Answers).ToArray();
        var without = answers.Count(a => a is NoAnswer);
        return without == 0 ? ExitCodes.Done : without < answers.Length || results.Any(r => r.Plans.Count > 0) ? ExitCodes.SomeSetAside : ExitCodes.NoneMeasured;
    }

    /// <summary>The command as it can be typed again.</summary>
    public static string Command(string file, string? dataset, string? run, string folder) =>
        string.Join(' ', ((string[])["./gaitseat", "study", file, .. dataset is null ? Array.Empty<string>() : ["--dataset", dataset], .. run is null ? Array.Empty<string>() : ["--run", run], "--out", folder]).Select(Quoted));

    private static string Quoted(string argument) => argument.Any(c => !char.IsLetterOrDigit(c) && c is not ('/' or '.' or '-' or '_')) ? $"'{argument.Replace("'", "'\\''", StringComparison.Ordinal)}'" : argument;
}
