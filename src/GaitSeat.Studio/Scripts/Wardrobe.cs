namespace GaitSeat.Studio;

/// <summary>Colours to draw from: coats and clothes as seen in any riding school.</summary>
internal static class Wardrobe
{
    private static readonly (string Coat, string Points, bool Dapples)[] Coats =
    [
        ("#8a4a24", "#1d1512", true), ("#9c5a2c", "#8a4a22", false), ("#4a2c1c", "#17110e", true), ("#b9b6b0", "#55524e", true), ("#3a2a22", "#14100e", false), ("#b98648", "#e8dcc0", false),
    ];

    private static readonly string[] Jackets = ["#24406b", "#7a1f2b", "#2f4a36", "#1f2024", "#5b3a6b", "#c7502f", "#3f7f8c"];
    private static readonly string[] Breeches = ["#d9c9a6", "#e9e6df", "#8d8578", "#4b4f58", "#c9b48a"];
    private static readonly string[] Cloths = ["#f2f1ec", "#27406e", "#e8e2cf", "#6e1f2a"];
    private static readonly string[] Sands = ["#b79b74", "#a98f6d", "#c2ab86"];

    public static Look Pick(SeededNoise noise)
    {
        var coat = Coats[Index(noise, Coats.Length)];
        return new Look
        {
            Coat = coat.Coat,
            Points = coat.Points,
            Dapples = coat.Dapples,
            Stockings = noise.Uniform() < 0.5,
            Jacket = Jackets[Index(noise, Jackets.Length)],
            Breeches = Breeches[Index(noise, Breeches.Length)],
            SaddleCloth = Cloths[Index(noise, Cloths.Length)],
            Sand = Sands[Index(noise, Sands.Length)],
            BoardLetter = "AKEHCMBF"[Index(noise, 8)].ToString(),
        };
    }

    private static int Index(SeededNoise noise, int count) => (int)(noise.Uniform() * count);
}
