using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>The lines of a sheet as sessions.</summary>
internal static class SheetReader
{
    internal static SheetResult Read(SheetGrid grid)
    {
        var problems = new List<SheetProblem>(grid.Problems);
        var warnings = new List<SheetProblem>();
        var sessions = new Dictionary<string, Session>(StringComparer.OrdinalIgnoreCase);
        var lineOf = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        foreach (var line in grid.Lines)
        {
            var before = problems.Count;
            var row = new SheetRow(grid, line, problems);
            var session = SessionOf(row);
            if (session.ClipFile.Length > 0 && !lineOf.TryAdd(session.ClipFile, line.Line))
            {
                row.Problem(SheetColumns.ClipFile, session.ClipFile, $"it stands in line {lineOf[session.ClipFile]} already; one row a clip is allowed");
            }

            if (FullName.LooksLikeOne(session.Rider))
            {
                warnings.Add(new(line.Line, SheetColumns.Rider, $"'{session.Rider}' looks like a full name. A pseudonym, such as R07, keeps the dataset free of names."));
            }

            if (PersonName.LooksLikeOneIn(session.ClipFile))
            {
                warnings.Add(new(line.Line, SheetColumns.ClipFile, "the file name looks as if it told a person's name. Rename the clip before it is measured: the dataset keeps the names of files."));
            }

            if (problems.Count == before) sessions[session.ClipFile] = session;
        }

        return new(sessions, [.. problems.OrderBy(p => p.Line)], warnings);
    }

    private static Session SessionOf(SheetRow row)
    {
        var date = row.Date(SheetColumns.SessionDate);
        return new(
            row.ClipFile(SheetColumns.ClipFile),
            date,
            row.Text(SheetColumns.Season) ?? date?.Year.ToString(System.Globalization.CultureInfo.InvariantCulture),
            row.Text(SheetColumns.Rider),
            row.Text(SheetColumns.Horse),
            new(row.Number(SheetColumns.Stature), row.Number(SheetColumns.Thigh), row.Number(SheetColumns.LowerLeg)),
            row.Number(SheetColumns.Hole),
            row.Number(SheetColumns.Leather),
            row.OneOf(SheetColumns.Rein, ["left", "right"], required: false),
            row.OneOf(SheetColumns.Consent, ["yes", "no"], required: true) == "yes",
            row.Text(SheetColumns.Note),
            row.Extra());
    }
}
