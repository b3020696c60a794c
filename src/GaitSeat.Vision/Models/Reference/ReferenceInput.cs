namespace GaitSeat.Vision.Models.Reference;

/// <summary>The test picture in the form each model wants.</summary>
internal static class ReferenceInput
{
    private const float Full = 255f;

    // NanoDet's own normalisation, B, G, R (nanodet, config of NanoDet-g).
    private static readonly double[] MeanBgr = [103.53, 116.28, 123.675];
    private static readonly double[] DeviationBgr = [57.375, 57.12, 58.395];

    public static float[] For(ModelSource source) => source.Name switch
    {
        "movenet-thunder" => Array.ConvertAll(ReferencePicture.Rgb(source.InputShape[0]), b => (float)b),
        "blazepose-heavy" => Array.ConvertAll(ReferencePicture.Rgb(source.InputShape[0]), b => b / Full),
        "nanodet" => PlanarBgr(source.InputShape[1]),
        var other => throw new ArgumentException($"no reference input for model '{other}'", nameof(source)),
    };

    private static float[] PlanarBgr(int side)
    {
        var rgb = ReferencePicture.Rgb(side);
        var input = new float[rgb.Length];
        for (var i = 0; i < side * side; i++)
        {
            for (var c = 0; c < 3; c++) input[c * side * side + i] = (float)((rgb[i * 3 + 2 - c] - MeanBgr[c]) / DeviationBgr[c]);
        }

        return input;
    }
}
