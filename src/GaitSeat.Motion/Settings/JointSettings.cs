using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Motion;

/// <summary>
/// Where the built-in body-point models put a point against the joint or the boot, in percent of leg length (about 82 cm); it is taken off. Three kinds of evidence, none of them a rider with
/// markers: 59 real pictures marked by eye (docs/real-footage-check.md), rendered riders with a detailed body mesh and known joint centres, and published offsets of like models (30 to 50 mm at
/// hip and knee; Needham et al. 2021, Sci Rep 11:20673). They agree in direction everywhere and in size to a few percent of a leg; what is set here lies between them and what they
/// leave open is in the standard errors. For a model of one's own set all of these to 0, or to what one has measured.
/// </summary>
public sealed record JointSettings
{
    /// <summary>Hip point from the joint along the trunk towards the shoulder. Pictures 6 ± 1 (the marker alone is good to 2), rendered 4, published 4 to 6.</summary>
    [Range(-20.0, 20.0)]
    public double HipTowardsShoulderPctLeg { get; init; } = 4.5;

    /// <summary>Knee point from the joint, upwards. Pictures 1.8 ± 0.8, rendered 2.6.</summary>
    [Range(-20.0, 20.0)]
    public double KneeUpPctLeg { get; init; } = 2;

    /// <summary>Ankle point from the joint, upwards. Pictures 0.6 ± 1 (judged in boots), rendered 4, drawn 2.</summary>
    [Range(-20.0, 20.0)]
    public double AnkleUpPctLeg { get; init; } = 1.5;

    /// <summary>Heel point from the boot's rear edge, upwards. Pictures 5.7 ± 1, rendered 8.8, drawn 6.5.</summary>
    [Range(-20.0, 20.0)]
    public double HeelUpPctLeg { get; init; } = 7;

    /// <summary>Heel point from the boot's rear edge, forward. Pictures 3.1 ± 1, rendered 2.4, drawn 4.3.</summary>
    [Range(-20.0, 20.0)]
    public double HeelForwardPctLeg { get; init; } = 3;

    /// <summary>Toe point from the boot's tip, forward. Pictures -4.7 ± 1.4, rendered -11, drawn -5 to -15.</summary>
    [Range(-30.0, 20.0)]
    public double ToeForwardPctLeg { get; init; } = -9;

    /// <summary>Toe point from the boot's tip, upwards. Rendered -2.5, drawn -2.5; pictures nothing sure.</summary>
    [Range(-20.0, 20.0)]
    public double ToeUpPctLeg { get; init; } = -2;

    /// <summary>The tread from the ankle point, forward. Drawn 8.5, rendered 11.2; a level foot of 26 cm with the ankle joint at 0.23 and the ball at 0.59 of it has 11.4, of which the ankle point's own 2.6 (pictures) are to be taken: 8.8.</summary>
    [Range(-20.0, 40.0)]
    public double TreadAheadOfAnklePctLeg { get; init; } = 9.5;

    /// <summary>How far the foot is slid, with heel and toe, to where the ankle says the tread is, 0..1; the rest is left to heel and toe. Boots hide heel and toe more than the ankle: on the drawn riders the tread's place scatters from clip to clip by 3.0 % of leg by heel and toe, 2.7 by the ankle, 2.3 by both; on the rendered ones by 1.7, 2.0 and 1.8.</summary>
    [Range(0.0, 1.0)]
    public double FootByAnkleShare { get; init; } = 0.5;
}
