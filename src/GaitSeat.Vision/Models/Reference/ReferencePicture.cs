namespace GaitSeat.Vision.Models.Reference;

/// <summary>
/// The fixed test picture: a striped field with a standing figure of capsules. Only + - * / sqrt and floor are used, so that
/// <c>picture.mjs</c>, which the weights' own runtime was given, makes the very same numbers.
/// </summary>
internal static class ReferencePicture
{
    private const double EdgeShade = 0.4;

    private static readonly Limb[] Limbs =
    [
        new(0.50, 0.20, 0.50, 0.22, 0.055, [205, 160, 130]),
        new(0.48, 0.30, 0.49, 0.52, 0.065, [60, 90, 160]),
        new(0.47, 0.33, 0.40, 0.46, 0.024, [70, 100, 170]),
        new(0.40, 0.46, 0.45, 0.56, 0.020, [205, 160, 130]),
        new(0.51, 0.33, 0.58, 0.46, 0.024, [50, 80, 150]),
        new(0.58, 0.46, 0.60, 0.57, 0.020, [195, 150, 120]),
        new(0.47, 0.54, 0.45, 0.71, 0.036, [190, 185, 170]),
        new(0.45, 0.71, 0.45, 0.88, 0.028, [40, 35, 35]),
        new(0.51, 0.54, 0.54, 0.71, 0.036, [180, 175, 160]),
        new(0.54, 0.71, 0.55, 0.88, 0.028, [35, 30, 30]),
        new(0.45, 0.90, 0.40, 0.91, 0.020, [30, 25, 25]),
        new(0.55, 0.90, 0.60, 0.91, 0.020, [30, 25, 25]),
    ];

    /// <summary>A square picture, R, G, B of each pixel, whole numbers 0..255.</summary>
    public static byte[] Rgb(int side)
    {
        var rgb = new byte[side * side * 3];
        Span<double> colour = stackalloc double[3];
        for (var i = 0; i < side * side; i++)
        {
            Paint((i % side + 0.5) / side, (i / side + 0.5) / side, colour);
            for (var c = 0; c < 3; c++) rgb[i * 3 + c] = (byte)Math.Floor(colour[c]);
        }

        return rgb;
    }

    /// <param name="u">Place across, over the side.</param>
    /// <param name="v">Place down, over the side.</param>
    private static void Paint(double u, double v, Span<double> colour)
    {
        colour[0] = 90 + 60 * Wave(3 * u + v);
        colour[1] = 120 + 50 * Wave(2 * v - u);
        colour[2] = 100 + 40 * Wave(5 * u);
        foreach (var limb in Limbs)
        {
            var d = limb.Distance(u, v);
            if (d >= 1) continue;
            for (var c = 0; c < 3; c++) colour[c] = limb.Colour[c] * (1 - EdgeShade * d * d);
        }
    }

    /// <summary>Triangle wave of period 1 between 0 and 1.</summary>
    private static double Wave(double t)
    {
        var f = t - Math.Floor(t);
        return f < 0.5 ? 2 * f : 2 - 2 * f;
    }

    /// <summary>A capsule; lengths over the picture's side.</summary>
    private sealed record Limb(double X0, double Y0, double X1, double Y1, double Radius, double[] Colour)
    {
        /// <summary>Distance to the axis over the radius.</summary>
        public double Distance(double u, double v)
        {
            var dx = X1 - X0;
            var dy = Y1 - Y0;
            var along = Math.Min(1, Math.Max(0, ((u - X0) * dx + (v - Y0) * dy) / (dx * dx + dy * dy)));
            var ex = u - X0 - along * dx;
            var ey = v - Y0 - along * dy;
            return Math.Sqrt(ex * ex + ey * ey) / Radius;
        }
    }
}
