namespace GaitSeat.Study.Report.Sections;

/// <summary>Where every number comes from, and how to get it again.</summary>
internal static class ProvenanceSection
{
    public static void Write(ReportBuilder report, ReportInput input)
    {
        report.Add(new Heading(2, "Provenance"));
        report.Add(new FigureTable(["", ""], [.. Rows(input)]));
        report.Add(new Paragraph(PreRegistration(input)));
        report.Add(new Heading(3, "To repeat it"));
        report.Add(new CodeBlock(input.Command));
        report.Add(new Paragraph($"The same data and the same study file give the same numbers to the last digit, on the same kind of processor: compare {NumbersFile.FileName}."));
        report.Add(new Heading(3, "The study file"));
        report.Add(new CodeBlock(input.File.Text));
    }

    private static IEnumerable<IReadOnlyList<string>> Rows(ReportInput input)
    {
        yield return ["study file", input.File.FileName];
        yield return ["its SHA-256", input.File.Sha256];
        yield return ["fixed on, as the file says", input.File.Registered?.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) ?? "not stated"];
        yield return ["last changed, as the disk tells", input.File.ChangedOn.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture)];
        yield return ["program", $"gaitseat {input.SoftwareVersion}"];
        if (input.Data is not { } data) yield break;
        yield return ["dataset", data.Folder];
        yield return ["pipeline hash", data.PipelineHash];
        yield return ["model hash", data.ModelHash];
        yield return ["measured with", string.Join(", ", data.SoftwareVersions.Select(v => $"gaitseat {v}"))];
        yield return ["schema version of the rows", string.Join(", ", data.SchemaVersions.Select(v => Shown.Count(v)))];
        foreach (var (file, sha, lines, _) in data.ValuesFiles) yield return [$"values from {file}", $"{Shown.Count(lines)} lines, SHA-256 {sha}"];
        for (var i = 0; i < data.Fingerprints.Count; i++)
            if (data.Fingerprints[i].Length > 0) yield return [$"SHA-256 of the columns read by question {i + 1}", data.Fingerprints[i]];
    }

    /// <summary>Dates are compared in the open; a date on a disk proves little, and the report says so.</summary>
    private static string PreRegistration(ReportInput input)
    {
        const string Proof = "A date on a disk can be changed: who wants others to believe it lodges the file's SHA-256 with someone before the season.";
        if (input.Data?.FirstSession is not { } first) return Proof;
        var fixedOn = input.File.Registered ?? input.File.ChangedOn;
        var order = input.File.ChangedOn <= first ? $"The study file was last changed before the first session in the data ({first:yyyy-MM-dd})."
            : fixedOn <= first ? $"The study file says it was fixed before the first session in the data ({first:yyyy-MM-dd}), and was changed on the disk after it."
            : $"The study file is younger than the first session in the data ({first:yyyy-MM-dd}): whether it was written before the data were looked at, the dates do not show.";
        return $"{order} {Proof}";
    }
}
