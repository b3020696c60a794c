using System.ComponentModel;
using GaitSeat.Cli.Asking;
using GaitSeat.Cli.Privacy;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>SQL over a dataset's tables, or one of the ready questions.</summary>
public sealed class QueryCommand(AnsiConsoles consoles) : Command<QueryCommand.Arguments>
{
    private const string TableFormat = "table";
    private const int MostRows = 1_000_000;
    private static readonly string[] Formats = [TableFormat, "csv", "json", "parquet"];

    public sealed class Arguments : LoggedArguments
    {
        [CommandArgument(0, "[sql]")]
        [Description("A query over the tables, such as \"select rider, count(*) from strides group by rider\", or the name of a ready question.")]
        public string? Sql { get; init; }

        [CommandOption("-d|--dataset <FOLDER>")]
        [Description("The dataset to ask.")]
        public string? Dataset { get; init; }

        [CommandOption("--list")]
        [Description("List the ready questions with their SQL.")]
        public bool List { get; init; }

        [CommandOption("--as <FORMAT>")]
        [Description("table (for people), csv, json or parquet.")]
        [DefaultValue(TableFormat)]
        public string As { get; init; } = TableFormat;

        [CommandOption("-o|--out <FILE>")]
        [Description("Where the answer goes; one of that name is replaced. Without it standard output; parquet needs a file.")]
        public string? Out { get; init; }

        [CommandOption("--rows <COUNT>")]
        [Description("How many rows a table shows at most.")]
        [DefaultValue(100)]
        public int Rows { get; init; }

        [CommandOption("--run <HASH>")]
        [Description("The beginning of the pipeline hash whose rows are asked for, where the dataset holds several runs.")]
        public string? Run { get; init; }

        public override ValidationResult Validate() =>
            List ? ValidationResult.Success()
            : Dataset is null ? ValidationResult.Error("--dataset is required: the folder a run has written to.")
            : Sql is null ? ValidationResult.Error("A query or the name of a ready question is required; --list shows them.")
            : !Formats.Contains(As) ? ValidationResult.Error($"--as {As}: {string.Join(", ", Formats)} are allowed.")
            : As == "parquet" && Out is null ? ValidationResult.Error("--as parquet needs --out: it is no text.")
            : As == TableFormat && Out is not null ? ValidationResult.Error("--out goes with --as csv, json or parquet.")
            : Rows is < 1 or > MostRows ? ValidationResult.Error($"--rows {Rows}: 1 to {MostRows} is allowed.")
            : ValidationResult.Success();
    }

    public override int Execute(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        if (settings.List)
        {
            foreach (var line in ReadyQuestions.All.SelectMany(QuestionLines)) consoles.RawOut.WriteLine(line);
            return ExitCodes.Done;
        }

        var sql = ReadyQuestions.All.FirstOrDefault(q => q.Name == settings.Sql!.Trim())?.Sql ?? settings.Sql!;
        if (settings.As != TableFormat) return Save(settings, sql);
        using var query = AskedQuery.Open(settings.Dataset!, settings.Run, file: null);
        var answer = query.Ask(sql, settings.Rows);
        Log(settings);
        Warn(settings);
        foreach (var line in AnswerTable.Lines(answer)) consoles.RawOut.WriteLine(line);
        return ExitCodes.Done;
    }

    private int Save(Arguments settings, string sql)
    {
        using var file = AnswerFile.For(settings.Out);
        using (var query = AskedQuery.Open(settings.Dataset!, settings.Run, file.Path)) query.Save(sql, Enum.Parse<AnswerFormat>(settings.As, ignoreCase: true));
        Warn(settings);
        Log(settings);
        file.Publish(consoles.RawOut);
        return ExitCodes.Done;
    }

    /// <summary>Before the answer is handed out. Which riders are in it the program does not know: all that were asked for are named.</summary>
    private static void Log(Arguments settings) => AuditNote.Add(settings.Dataset!, settings.By, "queried", settings.Sql!.ReplaceLineEndings(" "), settings.Run, new HashSet<string>(), settings.Out);

    /// <summary>Rows of several runs are of the same strides, and would be counted twice.</summary>
    private void Warn(Arguments settings)
    {
        if (settings.Run is null && DatasetRun.CountIn(settings.Dataset!) is > 1 and var runs)
            consoles.Error.WriteLine($"note: the rows are of {runs} runs with other settings or models. Keep to one with --run; the question 'runs' lists them.");
    }

    private static IEnumerable<string> QuestionLines(ReadyQuestion question) =>
        [question.Name, "  " + question.Question, .. question.Sql.ReplaceLineEndings("\n").Split('\n').Select(l => "    " + l), ""];
}
