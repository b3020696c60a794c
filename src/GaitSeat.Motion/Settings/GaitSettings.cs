using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>
/// Gait windows and spells. Amplitudes are half of peak to peak, in percent of leg length (about 80 cm), so that they hold without a scale.
/// A limit is where a gait is as likely as not; its evidence fades over a tenth of it or so on either side, and the evidence of all limits is multiplied.
/// Frequencies follow the trunk's vertical motion: walk 1.74 to 1.88 Hz, trot 2.56 to 2.78 Hz, canter 1.64 to 1.72 Hz (Clayton 1994, 1995, from memory);
/// small ponies are faster and circles slower, so the limits stand well outside.
/// </summary>
public sealed record GaitSettings
{
    /// <summary>Length of a gait window, s: three trot strides.</summary>
    [Range(1.0, 10.0)]
    public double WindowSeconds { get; init; } = 2.4;

    /// <summary>Length of the window over which rising and sitting are told apart, s: a rise of 3 cm must stand out of points that scatter by 1 % of rider height (amplitude error about 0.5 cm over 4 s, closed form).</summary>
    [Range(1.0, 20.0)]
    public double SeatWindowSeconds { get; init; } = 4;

    /// <summary>Length of the shortest window at either end of what was followed, s: not quite two trot strides. Without these a stride or two of trot beside a halt or walk were called walk.</summary>
    [Range(0.5, 10.0)]
    public double EdgeWindowSeconds { get; init; } = 1.4;

    /// <summary>Step from window to window, s.</summary>
    [Range(0.05, 2.0)]
    public double StepSeconds { get; init; } = 0.25;

    /// <summary>Shortest spell, s: what is shorter joins its neighbours where they agree, and is unknown otherwise. Two trot strides.</summary>
    [Range(0.5, 20.0)]
    public double MinSpellSeconds { get; init; } = 1.5;

    /// <summary>Slowest trunk bounce of any gait but halt, Hz.</summary>
    [Range(0.5, 3.0)]
    public double MinBounceHz { get; init; } = 1.25;

    /// <summary>Border between walk or canter below and trot above, Hz.</summary>
    [Range(1.0, 4.0)]
    public double TrotFromHz { get; init; } = 2.15;

    /// <summary>Fastest trunk bounce of a trot, Hz: stride frequency grows with mass^-0.15 (Heglund and Taylor 1988), so a 150 kg pony bounces at about 3.4 Hz where a 600 kg horse does at 2.75.</summary>
    [Range(2.0, 6.0)]
    public double TrotToHz { get; init; } = 3.6;

    /// <summary>Least amplitude of a trot's bounce, percent of leg length. The trunk moves 73 mm peak to peak at trot (Buchner 2000): 4.5 %; the limit is a third of it.</summary>
    [Range(0.1, 20.0)]
    public double TrotAmplitudePctLeg { get; init; } = 1.5;

    /// <summary>Least amplitude of a walk's bounce, percent of leg length: 1 cm peak to peak. No source.</summary>
    [Range(0.1, 20.0)]
    public double WalkAmplitudePctLeg { get; init; } = 0.6;

    /// <summary>Border between a walk's bounce and a canter's at like frequency, percent of leg length: 5.5 cm peak to peak. No source; measured walks lie at 2 to 4 cm, canters above 8.</summary>
    [Range(0.5, 20.0)]
    public double CanterAmplitudePctLeg { get; init; } = 3.4;

    /// <summary>Share of the vertical motion that one frequency must explain in a gait window, 0..1. No source: white noise explains about 0.15 of itself at its best frequency.</summary>
    [Range(0.0, 1.0)]
    public double Periodicity { get; init; } = 0.5;

    /// <summary>Most of the bounce amplitude a trot may show at half the bounce frequency. Two diagonals differ in rising trot (Persson-Sjodin 2018), a canter has all of its bounce there. No source for the number.</summary>
    [Range(0.0, 5.0)]
    public double TrotHalfRatio { get; init; } = 0.7;

    /// <summary>Border between sitting and rising: amplitude of the seat motion at half the bounce frequency, percent of leg length. A half-sine rise of 3 cm has 1.6 % (closed form).</summary>
    [Range(0.1, 20.0)]
    public double RisingAmplitudePctLeg { get; init; } = 1.0;

    /// <summary>Below this speed over the ground it may be a halt, legs a second; a walk covers about 2 (Clayton 1995, from memory), and 0.5 in a clip shown at a third of its pace.</summary>
    [Range(0.0, 5.0)]
    public double HaltSpeedLegsPerSecond { get; init; } = 0.35;

    /// <summary>Fastest walk and slowest canter over the ground, legs a second: 2.1 m/s, between an extended walk's 1.8 and a collected canter's 3.3 m/s (Clayton 1994, 1995, from memory).</summary>
    [Range(0.5, 20.0)]
    public double WalkToLegsPerSecond { get; init; } = 2.6;

    /// <summary>Slowest trot over the ground, legs a second, also on a circle seen at a slant: well below a collected trot's 4 (Clayton 1994, from memory). A small pony's walk has a trot's beat, but not this pace.</summary>
    [Range(0.1, 20.0)]
    public double TrotFromLegsPerSecond { get; init; } = 1.8;

    /// <summary>Pace over the ground that only canters have, as a rule, legs a second: 4.3 m/s; a working trot has 3.5, an extended one up to 4.9 (Clayton 1994, from memory).</summary>
    [Range(0.5, 30.0)]
    public double CanterFromLegsPerSecond { get; init; } = 5.3;

    /// <summary>Evidence for a walk or a canter from pace alone, 0..1: the horse gets along at a walk's speed, or at a canter's with a large bounce, though no beat is seen (poor points, a jump, or a clip shown slower than life). More than "unknown", less than any beat.</summary>
    [Range(0.001, 1.0)]
    public double PaceEvidence { get; init; } = 0.3;

    /// <summary>Evidence given to "unknown", 0..1: a gait must beat it.</summary>
    [Range(0.001, 1.0)]
    public double UnknownEvidence { get; init; } = 0.12;

    /// <summary>Cost of a change of gait between neighbouring windows, in natural logarithms of evidence. No source: a window's strong evidence (about 2) does not change the gait alone.</summary>
    [Range(0.0, 50.0)]
    public double SwitchCost { get; init; } = 3;
}
