using System.Globalization;
using GaitSeat.Pipeline.Privacy;
using GaitSeat.Store;

namespace GaitSeat.Cli.Privacy;

/// <summary>An erasure as lines for people: what goes, what stays, what the search found.</summary>
internal sealed class ErasureLines(AnsiConsoles consoles)
{
    private const int MostListed = 40;

    public void Write(string title, ForgetPlan plan, bool yes)
    {
        Line($"{title}");
        Line($"  {plan.Order.ClipKeys.Count} clips, {plan.LedgerFiles} files of their rows, verdicts and marks");
        foreach (var file in plan.Files.Take(MostListed)) Line($"  {WordOf(file)} {file.Path}");
        if (plan.Files.Count > MostListed) Line($"  and {plan.Files.Count - MostListed} files more");
        foreach (var model in plan.Models) Line($"  fault model that learnt from them: {model}; the rule is in force until 'train' learns anew");
        Line($"  {plan.AuditLines} lines of the audit log lose the pseudonym");
        if (plan.QueueRows is { } rows) Line($"  {rows} rows of the queue");
        foreach (var original in plan.Order.Originals) Line($"  source clip {original}");
        if (plan.Order.ClipFolder is not null) Line($"  {plan.SheetRows} rows of session sheet and consent file");
        var staying = plan.Sources.Except(plan.Order.Originals).ToArray();
        foreach (var clip in staying) Line($"stays: source clip {clip}");
        if (plan.Order.ClipFolder is null && plan.SheetRows > 0) Line($"stays: {plan.SheetRows} rows of session sheet and consent file");
        if (staying.Length > 0 || (plan.Order.ClipFolder is null && plan.SheetRows > 0)) Line($"To delete these as well: --originals.");
        if (plan.Order.Traces.RiderIsAWordOfOurs) Line($"The pseudonym is also a word of the tables: it is looked for in the columns for riders alone.");
        foreach (var entry in plan.HandedOut) Line($"went out before, and cannot be taken back from here: {entry.At:yyyy-MM-dd} {entry.Act} {entry.What} to {entry.Where}");
        Line($"Copies and backups of the dataset are not known here. Nothing is taken out of them.");
        if (!yes) Line($"Nothing was changed. To do it: --yes.");
    }

    public void Write(ForgetPlan plan, ForgetResult result)
    {
        foreach (var found in result.Proof.Found.Take(MostListed)) Line($"left: {found.Path}{(found.InName ? " (its name)" : "")}{(found.Rows > 0 ? $" ({found.Rows} rows)" : "")}{(found.InBytes ? " (its bytes)" : "")}");
        foreach (var unread in result.Proof.Unread.Take(MostListed)) Line($"could not be searched: {unread}");
        foreach (var original in result.OriginalsLeft) Line($"left: {original}");
        if (result.QueueRowsLeft > 0) Line($"left: {result.QueueRowsLeft} rows of the queue");
        Line($"Searched {result.Proof.Files} files, {result.Proof.Tables} of them tables, for {plan.Order.ClipKeys.Count} clips, {plan.Order.ClipFiles.Count} file names{(plan.Order.Rider is null ? "" : " and the pseudonym")}: {(result.IsClean ? "nothing is left." : "see above. Mend that and start the same command again.")}");
    }

    private static string WordOf(TracedFile file) => file.Remedy switch
    {
        TraceRemedy.RewriteTable => string.Create(CultureInfo.InvariantCulture, $"{file.Parts} rows out of"),
        TraceRemedy.DropLines => string.Create(CultureInfo.InvariantCulture, $"{file.Parts} lines out of"),
        _ => "file",
    };

    private void Line(FormattableString text) => consoles.RawOut.WriteLine(text.ToString(CultureInfo.InvariantCulture));
}
