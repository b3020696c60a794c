using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// The CSV beside the session sheet that says how far each rider's consent reaches: <c>rider, scope, until, note</c>. A folder without one holds the sheet's yes for everything, without end;
/// with one, a rider whom it does not name has agreed to nothing.
/// </summary>
public static class ConsentFile
{
    public const string FileName = "consent.csv";

    private const string Rider = "rider", Scope = "scope", Until = "until", All = "all";
    private static readonly char[] Between = [' ', '+', '/', '|'];
    private static readonly ConsentUse[] Uses = [ConsentUse.Measure, ConsentUse.Show, ConsentUse.Study, ConsentUse.Export, ConsentUse.Report];

    /// <summary>The words of the column <c>scope</c>.</summary>
    public static string Words(ConsentUse uses) => string.Join(' ', Uses.Where(u => uses.HasFlag(u)).Select(Word));

    /// <summary>The other way round; words it does not know say nothing.</summary>
    internal static ConsentUse UsesOf(string words) => words.Split(' ').Aggregate(ConsentUse.None, (uses, word) => uses | Uses.FirstOrDefault(u => Word(u) == word));

    /// <summary>Writes a file with the riders listed and their scope to be filled in: consent has to be given.</summary>
    /// <exception cref="IOException">The file is there already, or cannot be written.</exception>
    public static void WriteTemplate(string path, IEnumerable<string> riders)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        ArgumentNullException.ThrowIfNull(riders);
        if (File.Exists(path)) throw new IOException($"'{path}' is there already and is not overwritten.");
        AtomicFile.WriteText(path, string.Concat(riders.Select(r => $"{SheetWriter.Quoted(r, ',')},,,\n").Prepend($"{Rider},{Scope},{Until},note\n")));
    }

    /// <returns>The terms by rider (the case of letters does not matter) and what is wrong; terms are null where there is no file.</returns>
    internal static (IReadOnlyDictionary<string, ConsentTerms>? Terms, IReadOnlyList<SheetProblem> Errors) Read(string path, DateOnly today)
    {
        if (!File.Exists(path)) return (null, []);
        var terms = new Dictionary<string, ConsentTerms>(StringComparer.OrdinalIgnoreCase);
        var (text, problem) = SheetText.Read(path, "consent file");
        if (problem is not null) return (terms, Ours([problem]));
        if (SheetGrid.Cut(text!) is not { } grid) return (terms, Ours([new(null, null, $"'{path}' is empty; the first line must name the columns {Rider}, {Scope} and, where wanted, {Until}.")]));
        var problems = new List<SheetProblem>([.. grid.Problems, .. HeaderCheck.Problems(grid, [Rider, Scope])]);
        if (problems.Count > 0) return (terms, Ours(problems));
        foreach (var line in grid.Lines) Add(new(grid, line, problems), terms, today);
        return (terms, Ours(problems));
    }

    private static void Add(SheetRow row, Dictionary<string, ConsentTerms> terms, DateOnly today)
    {
        var rider = row.Text(Rider);
        if (rider is null) row.Problem(Rider, "", "the pseudonym of a rider is required");
        var (uses, until) = (UsesOf(row), row.Date(Until));
        var standing = until < today ? ConsentStanding.Ended : ConsentStanding.Given;
        if (rider is not null && !terms.TryAdd(rider, new(uses, until, standing))) row.Problem(Rider, rider, "the rider stands in the file already; one line a rider is allowed");
    }

    private static ConsentUse UsesOf(SheetRow row)
    {
        var allowed = $"'{All}', 'none', or some of {string.Join(", ", Uses.Select(Word))} with spaces between are allowed";
        if (row.Text(Scope) is not { } text)
        {
            row.Problem(Scope, "", allowed);
            return ConsentUse.None;
        }

        var uses = ConsentUse.None;
        foreach (var word in text.ToLowerInvariant().Split(Between, StringSplitOptions.RemoveEmptyEntries))
        {
            var use = word == All ? ConsentUse.Everything : Uses.FirstOrDefault(u => Word(u) == word);
            if (use == ConsentUse.None && word != "none") row.Problem(Scope, word, allowed);
            uses |= use;
        }

        return uses;
    }

    private static string Word(ConsentUse use) => use.ToString().ToLowerInvariant();

    private static SheetProblem[] Ours(IEnumerable<SheetProblem> problems) => [.. problems.Select(p => p with { File = FileName })];
}
