using GaitSeat.Model;

namespace GaitSeat.Faults.Rules;

/// <summary>
/// The faults that are conditions on spell means, with the limits of the settings. A length is held against its centimetre limit where
/// enough strides of the spell have centimetres, else against the percent-of-leg limit.
/// </summary>
internal sealed class RuleBook(RuleSettings settings, SpellStrides spell)
{
    private const string ThighPhrase = "Thigh {0} deg at the sit";
    private const string LeanPhrase = "Trunk lean {0} deg at the sit";
    private const string AheadPhrase = "foot {0} {unit} ahead of the hip at the sit";
    private const string SwingPhrase = "Foot travels {0} {unit} within the stride";

    /// <summary>The rules in the order they are reported; a rule whose fault is in the values of another's <see cref="Silences"/> gives way to it.</summary>
    public IEnumerable<FaultRule> Rules() =>
        [StirrupShort(), StirrupLong(), SmallRise(), ChairSeat(), ForkSeat(), Pressing(), ForcedHeel(), SwingingLeg(), BusyHands(), Behind(), Ahead(), HeavyLanding()];

    /// <summary>The fault left unsaid in a spell where the given, more telling one is found; null where there is none.</summary>
    public static Fault? Silences(Fault fault) => fault == Fault.PressingTheStirrup ? Fault.SwingingLowerLeg : null;

    /// <summary>Held against "clearly short" first where the spell is surely past that, so that the finding names the stronger limit.</summary>
    private FaultRule StirrupShort()
    {
        var rule = settings.StirrupShort;
        var clear = new Condition(StrideMeasure.ThighAngleSit, Side.Above, rule.ClearlyShortDeg, ThighPhrase);
        var mean = SpellMean.Of([.. spell.Strides.Where(s => SpellStrides.Has(s, clear.Measure)).Select(s => s.Measures[clear.Measure])]);
        var isClear = clear.Probability(mean) >= settings.MinimumProbability;
        var against = Words.Text($"a flat-work length reads about {rule.FlatWorkDeg:0.#} deg, past {rule.ShortDeg:0.#} reads short, past {rule.ClearlyShortDeg:0.#} clearly short");
        return new(Fault.StirrupShort, rule.Source, against, isClear ? clear : clear with { Threshold = rule.ShortDeg });
    }

    private FaultRule StirrupLong()
    {
        var rule = settings.StirrupLong;
        var rise = Length(StrideMeasure.RiseHeightCm, rule.SmallRiseCm, StrideMeasure.RiseHeightPctLeg, rule.SmallRisePctLeg, Side.Below, "rise {0} {unit}");
        var against = Words.Text($"a steep thigh (below {rule.SteepThighDeg:0.#} deg) with a rise below {Words.Limit(rise)} or a knee past {rule.StraightKneeDeg:0.#} deg: reaching for the stirrup");
        return new(Fault.StirrupLong, rule.Source, against,
            [new(StrideMeasure.ThighAngleSit, Side.Below, rule.SteepThighDeg, ThighPhrase)],
            [rise, new(StrideMeasure.KneeAngleSit, Side.Above, rule.StraightKneeDeg, "knee {0} deg at the sit")]);
    }

    private FaultRule SmallRise()
    {
        var rule = settings.SmallRise;
        var rise = Length(StrideMeasure.RiseHeightCm, rule.RiseCm, StrideMeasure.RiseHeightPctLeg, rule.RisePctLeg, Side.Below, "Rise {0} {unit}");
        return new(Fault.SmallRise, rule.Source, $"below {Words.Limit(rise)} the seat hardly leaves the saddle", rise);
    }

    private FaultRule ChairSeat()
    {
        var rule = settings.ChairSeat;
        var tread = FootAhead(rule.FootAheadCm, rule.FootAheadPctLeg);
        var heel = Length(StrideMeasure.HeelOffsetCm, rule.HeelAheadCm, StrideMeasure.HeelOffsetPctLeg, rule.HeelAheadPctLeg, Side.Above, "heel {0} {unit} ahead of the plumb line");
        return new(Fault.ChairSeat, rule.Source, $"tread past {Words.Limit(tread)} and heel past {Words.Limit(heel)}: the lower leg lies ahead of the seat",
            tread with { Phrase = Words.Capital(tread.Phrase) }, heel);
    }

    private FaultRule ForkSeat()
    {
        var rule = settings.ForkSeat;
        var heel = Length(StrideMeasure.HeelOffsetCm, -rule.HeelBehindCm, StrideMeasure.HeelOffsetPctLeg, -rule.HeelBehindPctLeg, Side.Below, "Heel {0} {unit} from the plumb line (minus is behind)");
        var lean = new Condition(StrideMeasure.TrunkLeanSit, Side.Above, rule.TrunkLeanDeg, "trunk lean {0} deg at the sit");
        return new(Fault.ForkSeat, rule.Source, $"heel past {Words.Limit(heel)} and lean past {Words.Limit(lean)}: the leg lies behind and the trunk tips over it", heel, lean);
    }

    private FaultRule Pressing()
    {
        var rule = settings.PressingTheStirrup;
        var swing = Swing(rule.DriftSwingCm, rule.DriftSwingPctLeg);
        var tread = FootAhead(rule.FootAheadCm, rule.FootAheadPctLeg);
        return new(Fault.PressingTheStirrup, rule.Source, $"travel past {Words.Limit(swing)} to a foot past {Words.Limit(tread)} ahead: pushed forward as the seat goes back", swing, tread);
    }

    private FaultRule ForcedHeel()
    {
        var rule = settings.ForcedHeel;
        var tread = FootAhead(rule.FootAheadCm, rule.FootAheadPctLeg);
        var pitch = new Condition(StrideMeasure.FootPitchSit, Side.Above, rule.FootPitchDeg, "Toe {0} deg above the heel");
        return new(Fault.ForcedHeel, rule.Source, $"pitch past {Words.Limit(pitch)} with the foot past {Words.Limit(tread)} ahead: the heel is forced down", pitch, tread);
    }

    private FaultRule SwingingLeg()
    {
        var rule = settings.SwingingLowerLeg;
        var swing = Swing(rule.DriftSwingCm, rule.DriftSwingPctLeg);
        return new(Fault.SwingingLowerLeg, rule.Source, $"a quiet lower leg stays below {Words.Limit(swing)}", swing);
    }

    private FaultRule BusyHands()
    {
        var rule = settings.BusyHands;
        var hand = Length(StrideMeasure.HandTravelCm, rule.HandTravelCm, StrideMeasure.HandTravelPctLeg, rule.HandTravelPctLeg, Side.Above, "Hand travels {0} {unit} (RMS) against the horse");
        return new(Fault.BusyHands, rule.Source, $"quiet hands stay below {Words.Limit(hand)}", hand);
    }

    private FaultRule Behind()
    {
        var rule = settings.BehindTheMovement;
        var lean = new Condition(StrideMeasure.TrunkLeanSit, Side.Below, rule.TrunkLeanDeg, LeanPhrase);
        return new(Fault.BehindTheMovement, rule.Source, $"below {Words.Limit(lean)} (minus is back) the trunk is behind the movement", lean);
    }

    private FaultRule Ahead()
    {
        var rule = settings.AheadOfTheMovement;
        var lean = new Condition(StrideMeasure.TrunkLeanSit, Side.Above, rule.TrunkLeanDeg, LeanPhrase);
        return new(Fault.AheadOfTheMovement, rule.Source, $"past {Words.Limit(lean)} the trunk is ahead of the movement", lean);
    }

    private FaultRule HeavyLanding()
    {
        var rule = settings.HeavyLanding;
        var impact = new Condition(StrideMeasure.SitImpact, Side.Above, rule.SitImpactCmS, "Seat lands at {0} cm/s");
        return new(Fault.HeavyLanding, rule.Source, $"a soft landing stays below {Words.Limit(impact)}", impact);
    }

    private Condition FootAhead(double cm, double pctLeg) =>
        Length(StrideMeasure.StirrupDriftOffsetCm, cm, StrideMeasure.StirrupDriftOffsetPctLeg, pctLeg, Side.Above, AheadPhrase);

    private Condition Swing(double cm, double pctLeg) =>
        Length(StrideMeasure.StirrupDriftSwingCm, cm, StrideMeasure.StirrupDriftSwingPctLeg, pctLeg, Side.Above, SwingPhrase);

    private Condition Length(StrideMeasure cmMeasure, double cm, StrideMeasure pctMeasure, double pct, Side side, string phrase) =>
        spell.CountWith(cmMeasure) >= settings.MinimumStrides
            ? new(cmMeasure, side, cm, phrase.Replace("{unit}", "cm", StringComparison.Ordinal))
            : new(pctMeasure, side, pct, phrase.Replace("{unit}", "% of leg", StringComparison.Ordinal));
}
