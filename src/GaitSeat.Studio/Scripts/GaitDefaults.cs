using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Usual timing and size of each gait, where a script does not say.</summary>
public static class GaitDefaults
{
    /// <summary>
    /// Strides per second. Walk 0.92, trot 1.34, canter 1.65: between the collected and medium gaits of dressage horses in
    /// Clayton 1994/1995 (walk 0.87–0.94, trot 1.28–1.39, canter 1.64–1.72 Hz; from memory, unverified). Halt 0.
    /// </summary>
    public static double StrideHz(Gait gait) => gait switch
    {
        Gait.Walk => 0.92,
        Gait.RisingTrot or Gait.SittingTrot => 1.34,
        Gait.Canter => 1.65,
        Gait.Halt => 0,
        _ => throw new ArgumentOutOfRangeException(nameof(gait), gait, "A made clip needs a known gait: Walk, RisingTrot, SittingTrot, Canter or Halt."),
    };

    /// <summary>
    /// Vertical motion of the trunk, cm peak to peak. Trot 8: 7.3 from Buchner 2000 in hand (53 mm of the centre of mass over 0.73),
    /// larger when ridden (Clayton 2025). Walk 3.5 and canter 12: common practice, no source.
    /// </summary>
    public static double BounceCm(Gait gait) => gait switch
    {
        Gait.Walk => 3.5,
        Gait.RisingTrot or Gait.SittingTrot => 8,
        Gait.Canter => 12,
        _ => 0,
    };

    /// <summary>Bounces of the trunk in one stride: two at walk and trot, one at canter (Viry 2013).</summary>
    public static int BouncesPerStride(Gait gait) => gait == Gait.Canter ? 1 : 2;

    /// <summary>
    /// Ground covered in one stride, m; speed = length x frequency. Walk 1.73 and canter 2.2 after Clayton 1994/1995 (from memory);
    /// trot 2.3, a little under her collected 2.50: a riding-school trot, no source.
    /// </summary>
    public static double StrideLengthM(Gait gait) => gait switch
    {
        Gait.Walk => 1.73,
        Gait.RisingTrot or Gait.SittingTrot => 2.3,
        Gait.Canter => 2.2,
        _ => 0,
    };
}
