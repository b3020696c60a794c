using System.ComponentModel;
using GaitSeat.Cli.Learning;
using GaitSeat.Faults.Teaching;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Settings;
using GaitSeat.Review;
using GaitSeat.Review.Web;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>The coach's review page, on this machine only unless it is shared, until it is stopped.</summary>
public sealed class ReviewCommand(AnsiConsoles consoles) : AsyncCommand<ReviewCommand.Arguments>
{
    private const double LongestMinutes = 24 * 60;
    private const int LongestJudge = 60;

    /// <summary>Variables that hold the passwords: the command line can be read by others.</summary>
    private const string PasswordVariable = "GAITSEAT_REVIEW_PASSWORD", CertificatePasswordVariable = "GAITSEAT_CERTIFICATE_PASSWORD";

    public sealed class Arguments : CommandSettings
    {
        [CommandArgument(0, "<folder>")]
        [Description("The folder with the clips and their session-sheet.csv.")]
        public string Folder { get; init; } = "";

        [CommandOption("-d|--dataset <FOLDER>", isRequired: true)]
        [Description("The dataset the clips were measured into. Verdicts are added to it.")]
        public string Dataset { get; init; } = "";

        [CommandOption("-j|--judge <NAME>")]
        [Description("Pseudonym of who judges; two who judge the same dataset give two names.")]
        [DefaultValue("coach")]
        public string Judge { get; init; } = "coach";

        [CommandOption("-m|--minutes <MINUTES>")]
        [Description("How long the coach has, minutes. Without it the queue holds every flag.")]
        public double? Minutes { get; init; }

        [CommandOption("--port <PORT>")]
        [Description("Port of the page. Without it a free one is taken.")]
        public int Port { get; init; }

        [CommandOption("--run <HASH>")]
        [Description("The beginning of the pipeline hash to review, where the dataset holds several runs.")]
        public string? Run { get; init; }

        [CommandOption("-p|--pipeline <FILE>")]
        [Description("The pipeline file the run was made with, for its rules and picture size. Without it the defaults hold.")]
        public string? Pipeline { get; init; }

        [CommandOption("--share")]
        [Description("Let other machines of the network in, by HTTPS and a password. Needs --certificate; read docs/review.md first.")]
        public bool Share { get; init; }

        [CommandOption("--certificate <PFX>")]
        [Description("Certificate with its private key (PKCS #12) for --share; a password it has comes in GAITSEAT_CERTIFICATE_PASSWORD.")]
        public string? Certificate { get; init; }

        [CommandOption("--address <ADDRESS>")]
        [Description("Address of this machine that --share listens on.")]
        [DefaultValue("0.0.0.0")]
        public string Address { get; init; } = "0.0.0.0";

        public override ValidationResult Validate() => this switch
        {
            { Share: true, Certificate: null } => ValidationResult.Error("--share needs --certificate: without one the footage would cross the network for all to read."),
            { Share: false, Certificate: not null } => ValidationResult.Error("--certificate is for --share."),
            { Minutes: not (null or (> 0 and <= LongestMinutes)) } => ValidationResult.Error(FormattableString.Invariant($"--minutes {Minutes}: more than 0 and at most {LongestMinutes} is allowed.")),
            { Port: < 0 or > 65535 } => ValidationResult.Error(FormattableString.Invariant($"--port {Port}: 1 to 65535 is allowed, or 0 for a free one.")),
            { Judge: var judge } when string.IsNullOrWhiteSpace(judge) || judge.Length > LongestJudge => ValidationResult.Error($"--judge: a pseudonym of 1 to {LongestJudge} characters is required."),
            _ => ValidationResult.Success(),
        };
    }

    public override async Task<int> ExecuteAsync(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        if (!Directory.Exists(settings.Folder)) throw new SeasonException($"there is no folder '{settings.Folder}'");
        var notes = SeasonSheet.Of(settings.Folder, Today.Local).Notes;
        var pipeline = PipelineFile.ReadOrDefaults(settings.Pipeline);
        var judged = JudgedSeason.Open(settings.Dataset, settings.Run, pipeline.Faults.Features);
        var models = judged.ModelsInUse(consoles.Error.WriteLine).ToDictionary(m => m.Key, m => m.Value.Model);
        var season = ReviewSeason.Of(
            judged.Dataset, judged.Run, judged.Table, judged.Verdicts, models, pipeline.Rules, pipeline.Faults, TeachingOrder.Read(Places.TeachingOrder), ExerciseCards.Read(Places.Exercises), pipeline.Read, settings.Minutes);
        var share = settings.Share ? await ShareAsync(settings, cancellationToken) : null;
        await using var site = await ReviewSite.StartAsync(season, settings.Folder, settings.Judge.Trim(), settings.Port, TimeProvider.System, share);
        foreach (var note in notes) consoles.Error.WriteLine(note);
        if (!File.Exists(Path.Combine(settings.Folder, SessionSheet.FileName))) consoles.Error.WriteLine("Without a sheet nobody's consent is recorded; the clips are shown as they were measured.");
        var (shown, hidden) = site.Questions;
        consoles.RawOut.WriteLine($"{shown} questions for {settings.Judge}{(hidden > 0 ? $"; {hidden} not shown for want of consent" : "")}.");
        consoles.RawOut.WriteLine(share is null ? "Open this link in a browser on this machine. It works once; whoever has it can see the clips:" : "Shared with the network at this address, for whoever knows the password:");
        consoles.RawOut.WriteLine(site.Link ?? site.Address);
        await consoles.RawOut.FlushAsync(cancellationToken);
        consoles.Error.WriteLine("Stop with Ctrl-C. Each answer is saved when it is given.");
        await WaitAsync(cancellationToken);
        return ExitCodes.Done;
    }

    private async Task<Share> ShareAsync(Arguments settings, CancellationToken cancellationToken)
    {
        if (!File.Exists(Path.Combine(settings.Folder, SessionSheet.FileName)))
            throw new ReviewException($"Sharing needs a {SessionSheet.FileName} in the folder: without it nobody's consent is recorded. 'gaitseat sheet' writes a template.");
        consoles.Error.WriteLine("Sharing means: whoever on the network knows the password sees these people, often children, with their faces and pseudonyms, and may judge and mark as "
            + $"'{settings.Judge.Trim()}'. What a browser shows can be copied. Share only where those shown, or their parents, have agreed to it.");
        var password = Environment.GetEnvironmentVariable(PasswordVariable);
        if (string.IsNullOrEmpty(password))
        {
            password = consoles.Error.Profile.Capabilities.Interactive
                ? await consoles.Error.PromptAsync(new TextPrompt<string>($"Password for the page, at least {Share.ShortestPassword} characters:").Secret(), cancellationToken)
                : throw new ReviewException($"Sharing needs a password of at least {Share.ShortestPassword} characters in the variable {PasswordVariable}.");
        }

        return Share.Of(settings.Address, settings.Certificate!, Environment.GetEnvironmentVariable(CertificatePasswordVariable), password, TimeProvider.System.GetUtcNow());
    }

    /// <summary>Until the program is stopped, which is how it is meant to end.</summary>
    private static async Task WaitAsync(CancellationToken stop)
    {
        try
        {
            await Task.Delay(Timeout.Infinite, stop);
        }
        catch (OperationCanceledException)
        {
            // Asked for.
        }
    }
}
