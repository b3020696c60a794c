using GaitSeat.Model;

namespace GaitSeat.Motion.Gaits;

/// <summary>How well each gait explains a window: a product of soft limits, 0..1.</summary>
internal sealed class GaitEvidence(GaitSettings settings)
{
    /// <summary>The slope of a soft limit over the limit itself.</summary>
    private const double Softness = 0.08;

    /// <summary>A rise of so many times the border between sitting and rising is beyond doubt: 4 to 5 cm.</summary>
    private const double ClearRise = 3;

    /// <summary>A trot is called rising or sitting where it is so many times as likely as the other; else it is unknown. No source.</summary>
    private const double OddsToBeCalled = 3;

    public static IReadOnlyList<Gait> Gaits { get; } = Enum.GetValues<Gait>();

    /// <returns>By <see cref="Gait"/>.</returns>
    public double[] Of(WindowEvidence? window)
    {
        var evidence = new double[Gaits.Count];
        Array.Fill(evidence, 1e-3);
        evidence[(int)Gait.Unknown] = settings.UnknownEvidence;
        if (window is not { } seen) return evidence;
        var w = WithoutAFalseHalt(seen);
        var periodic = Above(w.Periodicity, settings.Periodicity);
        var rising = double.IsNaN(w.RisePct) ? 0.5 : SeatStyle.ChanceOfRising(w.RisePct, w.RiseSe, settings.RisingAmplitudePctLeg);

        // A clear rise at half the bounce is as good a beat as the bounce itself, and no walk has it.
        var clear = double.IsNaN(w.RisePct) ? 0 : Above(w.RisePct - w.RiseSe, ClearRise * settings.RisingAmplitudePctLeg);
        Set(Gait.RisingTrot, Math.Max(periodic, clear) * TrotBounce(w) * rising);
        Set(Gait.SittingTrot, periodic * TrotBounce(w) * Faster(w, settings.TrotFromLegsPerSecond) * (1 - rising));
        Set(Gait.Unknown, periodic * TrotBounce(w) * OddsToBeCalled * Math.Min(rising, 1 - rising));
        var slow = periodic * Above(w.BounceHz, settings.MinBounceHz) * (1 - Above(w.BounceHz, settings.TrotFromHz));
        var large = Above(w.BouncePct, settings.CanterAmplitudePctLeg);
        Set(Gait.Canter, slow * large * Faster(w, settings.WalkToLegsPerSecond));
        Set(Gait.Walk, slow * (1 - large * Faster(w, settings.WalkToLegsPerSecond)) * Above(w.BouncePct, settings.WalkAmplitudePctLeg) * (1 - Halted(w, 0)));

        // What moves slower than any gait's beat is drift (a slope, a camera), however large.
        Set(Gait.Walk, settings.PaceEvidence * Strolls(w) * (1 - large * Above(w.BounceHz, settings.MinBounceHz)));
        // Faster than trots are ridden, and no beat: a canter in pieces, as before and after a jump.
        if (!double.IsNaN(w.SpeedLegsPerSecond)) Set(Gait.Canter, settings.PaceEvidence * large * Faster(w, settings.CanterFromLegsPerSecond));

        // A bounce without a beat, and smaller than any trot's, is the noise of the points.
        var bounces = Above(w.BouncePct, settings.WalkAmplitudePctLeg) * Math.Max(periodic, Above(w.BouncePct, settings.TrotAmplitudePctLeg));
        Set(Gait.Halt, (1 - bounces) * Halted(w, 1));
        return evidence;

        void Set(Gait gait, double value) => evidence[(int)gait] = Math.Max(evidence[(int)gait], value);
    }

    /// <summary>A horse that stands does not bounce (a slope or a camera may drift, slower than any beat): then it is the surroundings that were not followed.</summary>
    private WindowEvidence WithoutAFalseHalt(WindowEvidence w) =>
        Halted(w, 0) > 0.5 && w.BouncePct > settings.TrotAmplitudePctLeg && w.BounceHz > settings.MinBounceHz ? w with { SpeedLegsPerSecond = double.NaN } : w;

    private double TrotBounce(WindowEvidence w) =>
        Above(w.BounceHz, settings.TrotFromHz)
        * (1 - Above(w.BounceHz, settings.TrotToHz))
        * Above(w.BouncePct, settings.TrotAmplitudePctLeg)
        * (1 - Above(w.HalfRatio, settings.TrotHalfRatio));

    private double Halted(WindowEvidence w, double whereUnknown) =>
        double.IsNaN(w.SpeedLegsPerSecond) ? whereUnknown : 1 - Above(Math.Abs(w.SpeedLegsPerSecond), settings.HaltSpeedLegsPerSecond);

    /// <summary>Gets along, and slower than a canter or a usual trot; 0 where the speed is not known.</summary>
    private double Strolls(WindowEvidence w) =>
        double.IsNaN(w.SpeedLegsPerSecond) ? 0 : (1 - Halted(w, 1)) * (1 - Faster(w, settings.WalkToLegsPerSecond));

    /// <summary>Covers the ground faster than a limit; 1, nothing said, where the speed is not known.</summary>
    private static double Faster(WindowEvidence w, double legsPerSecond) =>
        double.IsNaN(w.SpeedLegsPerSecond) ? 1 : Above(Math.Abs(w.SpeedLegsPerSecond), legsPerSecond);

    /// <summary>Logistic: 0.5 at the limit, 0.92 a fifth above it, 0.08 a fifth below.</summary>
    private static double Above(double value, double limit) => 1 / (1 + Math.Exp((limit - value) / (Softness * limit)));
}
