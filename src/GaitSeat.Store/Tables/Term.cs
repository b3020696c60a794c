using System.Text.Json;

namespace GaitSeat.Store;

/// <summary>The written form of an enum member where the model has none of its own: <c>StirrupShort</c> is <c>stirrup_short</c>.</summary>
internal static class Term
{
    internal static string Of<T>(T value)
        where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());
}
