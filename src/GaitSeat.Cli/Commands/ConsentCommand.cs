using System.ComponentModel;
using System.Globalization;
using GaitSeat.Model;
using GaitSeat.Pipeline.Season;
using GaitSeat.Store;
using Spectre.Console;
using Spectre.Console.Cli;

namespace GaitSeat.Cli.Commands;

/// <summary>Tells what each rider of a folder has agreed to, or writes the consent file to be filled in.</summary>
public sealed class ConsentCommand(AnsiConsoles consoles) : Command<ConsentCommand.Arguments>
{
    public sealed class Arguments : CommandSettings
    {
        [CommandArgument(0, "<folder>")]
        [Description("The folder with the clips and their session-sheet.csv.")]
        public string Folder { get; init; } = "";

        [CommandOption("--write")]
        [Description("Write consent.csv with the riders of the sheet, scope and last day to be filled in. From then on a rider it does not name has agreed to nothing.")]
        public bool Write { get; init; }
    }

    public override int Execute(CommandContext context, Arguments settings, CancellationToken cancellationToken)
    {
        var (sheet, consent) = (Path.Combine(settings.Folder, SessionSheet.FileName), Path.Combine(settings.Folder, ConsentFile.FileName));
        var read = SessionSheet.Read(sheet, Today.Local);
        if (read.Errors.Count > 0) throw new SeasonException($"'{sheet}' cannot be used", [.. read.Errors.Select(e => e.ToString())]);
        var riders = read.Sessions.Values.GroupBy(s => s.Rider ?? "", StringComparer.OrdinalIgnoreCase).OrderBy(r => r.Key, StringComparer.Ordinal).ToArray();
        if (settings.Write)
        {
            if (File.Exists(consent)) throw new SeasonException($"'{consent}' is there already and is not overwritten");
            ConsentFile.WriteTemplate(consent, riders.Select(r => r.Key).Where(r => r.Length > 0));
            consoles.RawOut.WriteLine($"{consent}: written. Fill in scope ({ConsentFile.Words(ConsentUse.Everything)}, all or none) and, where there is one, the last day.");
            return ExitCodes.Done;
        }

        foreach (var rider in riders) consoles.RawOut.WriteLine(Line(rider.Key, [.. rider]));
        if (!File.Exists(consent)) consoles.Error.WriteLine($"There is no {ConsentFile.FileName}: a yes in the sheet holds for everything, without end.");
        foreach (var warning in read.Warnings) consoles.Error.WriteLine(warning.ToString());
        return ExitCodes.Done;
    }

    private static string Line(string rider, Session[] rows)
    {
        var no = rows.Count(r => r.Against(ConsentUse.Measure)?.Reason == "no_consent");
        var first = rows.FirstOrDefault(r => r.Terms != ConsentTerms.Unlimited) ?? rows[0];
        var terms = first.Terms.Standing == ConsentStanding.Given ? ConsentFile.Words(first.Terms.Uses) : first.Against(ConsentUse.Measure)!.Sentence;
        var until = first.Terms is { Standing: ConsentStanding.Given, Until: { } day } ? string.Create(CultureInfo.InvariantCulture, $" until {day:yyyy-MM-dd}") : "";
        return $"{(rider.Length > 0 ? rider : "(no rider)")}: {rows.Length} clips, {no} of them with a no; {(no == rows.Length ? "none" : terms + until)}";
    }
}
