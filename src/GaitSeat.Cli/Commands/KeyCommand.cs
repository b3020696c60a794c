using System.ComponentModel;
using GaitSeat.Pipeline.Season;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>The encrypted file that holds the names behind the pseudonyms.</summary>
public sealed class KeyCommand(AnsiConsoles consoles) : Command<KeyCommand.Arguments>
{
    private const string PassphraseVariable = "GAITSEAT_KEY_PASSPHRASE";
    private const int ShortestPassphrase = 12;
    private static readonly string[] Actions = ["add", "remove", "list", "name", "find", "check"];

    public sealed class Arguments : CommandSettings
    {
        [CommandArgument(0, "<action>")]
        [Description("add <pseudonym>, remove <pseudonym>, list (pseudonyms only), name <pseudonym> (tells the name), find (a name, asked for: tells the pseudonym), check <folder> (clips whose file names tell a name).")]
        public string Action { get; init; } = "";

        [CommandArgument(1, "[what]")]
        [Description("A pseudonym; with check a folder.")]
        public string? What { get; init; }

        [CommandOption("-f|--file <FILE>", isRequired: true)]
        [Description("The key file. Keep it apart from the dataset. The passphrase is asked for, or read from GAITSEAT_KEY_PASSPHRASE.")]
        public string File { get; init; } = "";

        [CommandOption("--name-from <FILE>")]
        [Description("With add and find: a text file with the name, where nobody is there to be asked. Names on the command line would stay in the shell's history.")]
        public string? NameFrom { get; init; }

        public override ValidationResult Validate() => !Actions.Contains(Action)
            ? ValidationResult.Error($"'{Action}' is no action; {string.Join(", ", Actions)} are allowed.")
            : What is null && Action is not ("list" or "find") ? ValidationResult.Error($"key {Action}: name {(Action == "check" ? "a folder" : "a pseudonym")} after it.")
            : ValidationResult.Success();
    }

    public override int Execute(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var passphrase = Passphrase(settings);
        var key = settings.Action == "add" && !File.Exists(settings.File) ? new PseudonymKey() : PseudonymKey.Open(settings.File, passphrase);
        switch (settings.Action)
        {
            case "add":
                key.Set(settings.What!, Asked(settings, $"Name of {settings.What}:"));
                key.Save(settings.File, passphrase);
                consoles.RawOut.WriteLine($"{settings.What} is in the key; {key.Pseudonyms.Count} in all.");
                break;
            case "remove":
                if (!key.Remove(settings.What!)) throw new KeyFileException($"'{settings.What}' is not in the key.");
                key.Save(settings.File, passphrase);
                consoles.RawOut.WriteLine($"{settings.What} is out of the key; {key.Pseudonyms.Count} are left.");
                break;
            case "list":
                foreach (var pseudonym in key.Pseudonyms) consoles.RawOut.WriteLine(pseudonym);
                break;
            case "name":
                consoles.RawOut.WriteLine(key.NameOf(settings.What!) ?? throw new KeyFileException($"'{settings.What}' is not in the key."));
                break;
            case "find":
                foreach (var pseudonym in key.Find(Asked(settings, "Name:"))) consoles.RawOut.WriteLine(pseudonym);
                break;
            default:
                return Check(key, settings.What!);
        }

        return ExitCodes.Done;
    }

    private int Check(PseudonymKey key, string folder)
    {
        var told = ClipFolder.List(folder).Select(c => Path.GetFileName(c)!).Select(f => (File: f, Riders: key.NamedIn(f), Looks: PersonName.LooksLikeOneIn(f))).Where(f => f.Riders.Count > 0 || f.Looks).ToArray();
        foreach (var clip in told) consoles.RawOut.WriteLine(clip.Riders.Count > 0 ? $"{clip.File}: tells the name of {string.Join(", ", clip.Riders)}" : $"{clip.File}: looks as if it told a person's name");
        consoles.Error.WriteLine(told.Length == 0 ? "No file name tells a name that is known or looks like one." : "Rename these before they are measured: the dataset keeps the names of files.");
        return told.Length == 0 ? ExitCodes.Done : ExitCodes.SomeSetAside;
    }

    private string Passphrase(Arguments settings)
    {
        var said = Environment.GetEnvironmentVariable(PassphraseVariable) is { Length: > 0 } variable ? variable : Ask("Passphrase of the key:", secret: true, PassphraseVariable);
        return said.Length >= ShortestPassphrase || File.Exists(settings.File) ? said : throw new KeyFileException($"A passphrase of at least {ShortestPassphrase} characters is required for a new key file: several words are easier to keep in mind than signs.");
    }

    private string Asked(Arguments settings, string question) => settings.NameFrom is { } file
        ? File.Exists(file) ? File.ReadAllText(file).Trim() : throw new KeyFileException($"There is no file '{file}'.")
        : Ask(question, secret: false, "--name-from");

    private string Ask(string question, bool secret, string instead)
    {
        if (!consoles.Error.Profile.Capabilities.Interactive) throw new KeyFileException($"Nobody is there to be asked ('{question}'); give it with {instead}.");
        var prompt = new TextPrompt<string>(question);
        return consoles.Error.Prompt(secret ? prompt.Secret() : prompt);
    }
}
