using System.Text.Json;
using System.Text.Json.Serialization;

namespace GaitSeat.Faults.Training;

/// <summary>How model facts stand in JSON: terms in snake_case, LF line ends, so that the same facts are the same bytes on every system.</summary>
internal static class FaultJson
{
    internal static JsonSerializerOptions Options { get; } = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.SnakeCaseLower,
        Converters = { new JsonStringEnumConverter(JsonNamingPolicy.SnakeCaseLower) },
        NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals,
        WriteIndented = true,
        NewLine = "\n",
    };
}
