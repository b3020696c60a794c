using System.Text.Json;
using Microsoft.AspNetCore.Http;

namespace GaitSeat.Review.Web;

/// <summary>What the page sends to write.</summary>
internal static class Body
{
    /// <returns>Null where it is not what the page sends; that has been answered.</returns>
    internal static async Task<T?> ReadAsync<T>(HttpContext context)
        where T : class
    {
        try
        {
            if (await context.Request.ReadFromJsonAsync<T>(context.RequestAborted) is { } given) return given;
        }
        catch (Exception e) when (e is JsonException or BadHttpRequestException)
        {
            // Said below, like an empty body.
        }

        await Guard.RefuseAsync(context, StatusCodes.Status400BadRequest, "The request is nothing this page sends.");
        return null;
    }
}
