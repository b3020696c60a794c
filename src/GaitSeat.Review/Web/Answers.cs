using GaitSeat.Model;
using GaitSeat.Review.Questions;
using Microsoft.AspNetCore.Http;

namespace GaitSeat.Review.Web;

/// <summary>Takes what the page sends to write: answers and undoing.</summary>
internal sealed class Answers(Desk desk)
{
    /// <summary>Longest note kept, characters.</summary>
    internal const int LongestNote = 2000;

    private static readonly VerdictAnswer[] Allowed = [VerdictAnswer.Agrees, VerdictAnswer.DoesNot, VerdictAnswer.CannotTell];

    internal async Task AnswerAsync(HttpContext context)
    {
        if (await Body.ReadAsync<GivenAnswer>(context) is not { } given) return;
        if (desk.Find(given.Id ?? "") is not { } question)
        {
            await desk.RefuseAsync(context, given.Id ?? "");
            return;
        }

        var note = string.IsNullOrWhiteSpace(given.Note) ? null : given.Note.Trim();
        if (Allowed.Where(a => a.ToTerm() == given.Answer).Select(a => (VerdictAnswer?)a).FirstOrDefault() is not { } answer)
            await Guard.RefuseAsync(context, StatusCodes.Status400BadRequest, $"Allowed answers are {string.Join(", ", Allowed.Select(a => a.ToTerm()))}.");
        else if (note?.Length > LongestNote)
            await Guard.RefuseAsync(context, StatusCodes.Status400BadRequest, $"The note has {note.Length} characters; at most {LongestNote} are kept.");
        else if (FaultsOf(question, answer, given.Fault) is not { } faults)
            await Guard.RefuseAsync(context, StatusCodes.Status400BadRequest, "Say which fault is there.");
        else
        {
            // Not given up half-way when the page is closed: what was asked for is written.
            await desk.Verdicts.AnswerAsync(question, faults, answer, note, CancellationToken.None);
            await context.Response.WriteAsJsonAsync(await desk.ShowAsync(question, context.RequestAborted));
        }
    }

    internal async Task UndoAsync(HttpContext context)
    {
        var act = await desk.Verdicts.UndoAsync(CancellationToken.None);
        if (act.Count == 0)
        {
            await context.Response.WriteAsJsonAsync(new UndoneAnswer(null, "There is nothing to undo."));
            return;
        }

        var question = desk.Book.Reopen(new(act[0].ClipKey, act[0].SpellNumber), act[0].Fault, act[0].Drawn, act[0].Drawn == Drawn.Random);
        var shown = question is not null && desk.Find(question.Id) is not null;
        await context.Response.WriteAsJsonAsync(new UndoneAnswer(shown ? question!.Id : null, "Taken back; the earlier row stays in the table and a row that withdraws it was added."));
    }

    /// <summary>One fault, or of a spell drawn at random all of them, unless one is said to be there.</summary>
    private static Fault[]? FaultsOf(Question question, VerdictAnswer answer, string? term)
    {
        if (question.Fault is { } own) return [own];
        if (answer != VerdictAnswer.Agrees) return Enum.GetValues<Fault>();
        Fault[] named = [.. Enum.GetValues<Fault>().Where(f => f.ToTerm() == term)];
        return named.Length == 0 ? null : named;
    }
}
