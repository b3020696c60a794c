using GaitSeat.Review.Clips;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace GaitSeat.Review.Web;

/// <summary>Hands clips out by their keys, as they are or as a copy that the browser can play; what is handed out is logged first.</summary>
internal sealed class ClipDoor(ClipShelf shelf, PlayableCopies copies, ShownLog log)
{
    internal Task ClipAsync(HttpContext context) => HandOutAsync(context, (clip, _) => clip.Path);

    internal Task CopyAsync(HttpContext context) => HandOutAsync(context, (_, key) => copies.Find(key));

    /// <summary>Answers when the copy is there, which takes about as long as the clip, or longer.</summary>
    internal async Task MakeCopyAsync(HttpContext context)
    {
        if (await Body.ReadAsync<GivenClip>(context) is not { } given) return;
        var key = given.ClipKey ?? "";
        var clip = await shelf.FindAsync(key, context.RequestAborted);
        if (clip.Path is null)
        {
            await Guard.RefuseAsync(context, StatusCodes.Status404NotFound, clip.Refusal!);
            return;
        }

        try
        {
            await copies.MakeAsync(key, clip.Path, () => shelf.Refusal(key) is null, context.RequestAborted);
            await context.Response.WriteAsJsonAsync(new MadeCopy(true, "The copy is there."));
        }
        catch (ReviewException e)
        {
            // A clip that cannot be decoded is no fault of the page: said, and not an error.
            await context.Response.WriteAsJsonAsync(new MadeCopy(false, e.Message));
        }
    }

    private sealed record MadeCopy(bool IsMade, string Text);

    private async Task HandOutAsync(HttpContext context, Func<ShelvedClip, string, string?> pathOf)
    {
        var key = (string)context.GetRouteValue("key")!;
        var clip = await shelf.FindAsync(key, context.RequestAborted);
        if (clip.Path is null) await Guard.RefuseAsync(context, StatusCodes.Status404NotFound, clip.Refusal!);
        else if (pathOf(clip, key) is not { } path) await Guard.RefuseAsync(context, StatusCodes.Status404NotFound, "No copy of this clip was made.");
        else
        {
            log.Tell("clip", key);
            await Results.File(path, ClipTypes.Of(path), enableRangeProcessing: true).ExecuteAsync(context);
        }
    }
}
