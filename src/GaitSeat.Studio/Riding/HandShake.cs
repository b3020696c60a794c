namespace GaitSeat.Studio;

/// <summary>
/// An unsteady hand: slow sway below 2 Hz and a tremor of 3 to 8 Hz, each the sum of a few waves of seeded phase, so the band has an end and every machine
/// sees the same. Sizes by eye from clips filmed standing by the track: no source.
/// </summary>
internal sealed class HandShake
{
    private static readonly (double Hz, double Share)[] Waves = [(0.47, 1), (0.91, 0.8), (1.63, 0.5), (3.1, 0.22), (4.7, 0.16), (6.3, 0.10), (7.9, 0.06)];

    /// <summary>Turns of the camera, rad, standard deviation about: pan and tilt 0.25 deg, roll 0.3 deg; and shifts of the lens, m.</summary>
    private const double TurnRad = 0.0045;
    private const double RollRad = 0.005;
    private const double ShiftM = 0.012;

    private readonly double[] _phases;

    public HandShake(int seed)
    {
        var noise = new SeededNoise(seed, stream: 8);
        _phases = [.. Enumerable.Range(0, 6 * Waves.Length).Select(_ => noise.Uniform())];
    }

    public double PanRad(double seconds) => TurnRad * At(seconds, 0);

    public double TiltRad(double seconds) => TurnRad * At(seconds, 1);

    public double RollRadAt(double seconds) => RollRad * At(seconds, 2);

    public double RightM(double seconds) => ShiftM * At(seconds, 3);

    public double UpM(double seconds) => ShiftM * At(seconds, 4);

    public double AwayM(double seconds) => ShiftM * At(seconds, 5);

    private double At(double seconds, int channel)
    {
        var sum = 0.0;
        for (var i = 0; i < Waves.Length; i++)
            sum += Waves[i].Share * Math.Sin(2 * Math.PI * (Waves[i].Hz * seconds + _phases[channel * Waves.Length + i]));
        return sum;
    }
}
