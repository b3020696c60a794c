using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>The gait words of truth files.</summary>
internal static class GaitWords
{
    private static readonly (Gait Gait, string Word)[] Words =
    [
        (Gait.RisingTrot, "rising"), (Gait.SittingTrot, "sitting"), (Gait.Walk, "walk"), (Gait.Canter, "canter"), (Gait.Halt, "halt"),
    ];

    public static string Of(Gait gait) =>
        Array.Find(Words, w => w.Gait == gait).Word ?? throw new ArgumentOutOfRangeException(nameof(gait), gait, "No word for this gait in truth files.");

    public static Gait Parse(string word)
    {
        var at = Array.FindIndex(Words, w => w.Word == word);
        return at >= 0
            ? Words[at].Gait
            : throw new InvalidDataException($"Unknown gait '{word}' in a truth file; allowed: {string.Join(", ", Words.Select(w => w.Word))}.");
    }
}
