using GaitSeat.Model;

namespace GaitSeat.Studio;

/// <summary>Draws the clips of a judged season from its plan. The same plan and seed give the same clips and answers.</summary>
internal static class JudgedSeason
{
    private const double Percent = 100;
    private const int FirstStream = 1000;
    private static readonly DateOnly FirstDay = new(2026, 3, 1);
    private static readonly string[] Coats = ["bay", "grey", "chestnut"];

    /// <exception cref="ArgumentException">The plan cannot be followed: what is wrong, and what is allowed.</exception>
    internal static IReadOnlyList<JudgedClip> Of(JudgedPlan plan, int seed)
    {
        Demand(plan);
        return [.. Enumerable.Range(1, plan.Riders).SelectMany(r => OfRider(plan, r, seed))];
    }

    private static IEnumerable<JudgedClip> OfRider(JudgedPlan plan, int rider, int seed)
    {
        var noise = new SeededNoise(seed, FirstStream + rider);
        var (own, daily) = (Seat(noise), new SeededNoise(seed, FirstStream + plan.Riders + rider));
        var answers = new SeededNoise(seed, FirstStream + 2 * plan.Riders + rider);
        for (var c = 0; c < plan.ClipsEach; c++)
        {
            var (script, planted) = Ridden(plan, own, daily);
            yield return new(
                FormattableString.Invariant($"j{rider:00}-{c + 1:00}"), FormattableString.Invariant($"J{rider:00}"), FormattableString.Invariant($"K{(rider + 1) / 2:00}"), FirstDay.AddDays(7 * c),
                Coats[rider % Coats.Length], seed + rider, script with { Seed = seed + plan.ClipsEach * rider + c, Facing = c % 2 == 0 ? Facing.Left : Facing.Right }, planted,
                plan.Faults.ToDictionary(f => f.Fault, f => planted.Contains(f.Fault) != answers.Uniform() < plan.WrongAnswersPct / Percent));
        }
    }

    /// <summary>A rider's own build and seat. Statures and segments within the published ranges named at <see cref="ClipScript"/>; the rest a choice, wide enough that no one limit fits every rider.</summary>
    private static ClipScript Seat(SeededNoise noise) => new()
    {
        DurationSeconds = 6,
        Way = Way.ConstantYaw,
        StatureCm = noise.Between(156, 182),
        ThighOverStature = noise.Between(0.230, 0.244),
        ShankOverStature = noise.Between(0.239, 0.249),
        StrideHz = noise.Between(1.28, 1.42),
        RiseCm = noise.Between(8, 11),
        ThighSitDeg = noise.Between(40, 48),
        TrunkLeanDeg = noise.Between(3, 11),
        FootPitchDeg = noise.Between(2, 12),
        DriftSwingCm = noise.Between(1, 3),
        DriftOffsetCm = noise.Between(-3, 4),
    };

    /// <summary>A day's ride: the rider's own seat, a little otherwise than yesterday, with what is planted on top. What no leg can ride is drawn again.</summary>
    private static (ClipScript Script, IReadOnlySet<Fault> Planted) Ridden(JudgedPlan plan, ClipScript own, SeededNoise noise)
    {
        while (true)
        {
            var planted = Draw(plan, noise);
            var script = own with
            {
                YawDeg = noise.Between(-12, 12),
                RiderHeightPx = noise.Between(200, 330),
                StrideHz = own.StrideHz + 0.02 * noise.Normal(),
                RiseCm = Math.Max(2, own.RiseCm + 0.6 * noise.Normal()),
                ThighSitDeg = own.ThighSitDeg + 1.5 * noise.Normal(),
                TrunkLeanDeg = own.TrunkLeanDeg + 1.5 * noise.Normal(),
                DriftSwingCm = Math.Max(0, own.DriftSwingCm + 0.4 * noise.Normal()),
                DriftOffsetCm = own.DriftOffsetCm + 0.8 * noise.Normal(),
                DriftPhase = noise.Uniform(),
            };
            foreach (var fault in plan.Faults.Where(f => planted.Contains(f.Fault))) script = With(script, fault, noise);
            try
            {
                _ = new Ride(script);
                return (script, planted);
            }
            catch (ArgumentException)
            {
                // Out of a leg's reach: next draw.
            }
        }
    }

    private static HashSet<Fault> Draw(JudgedPlan plan, SeededNoise noise)
    {
        var planted = new HashSet<Fault>();
        foreach (var fault in plan.Faults)
            if (noise.Uniform() < (fault.With is { } with && planted.Contains(with) ? fault.ShareWithPct!.Value : fault.SharePct) / Percent) planted.Add(fault.Fault);
        return planted;
    }

    private static ClipScript With(ClipScript s, PlantedFault f, SeededNoise noise) => s with
    {
        ThighSitDeg = s.ThighSitDeg + Drawn(f.ThighSitDeg, noise),
        RiseCm = Math.Max(1.5, s.RiseCm + Drawn(f.RiseCm, noise)),
        TrunkLeanDeg = s.TrunkLeanDeg + Drawn(f.TrunkLeanDeg, noise),
        DriftSwingCm = s.DriftSwingCm + Drawn(f.DriftSwingCm, noise),
        DriftOffsetCm = s.DriftOffsetCm + Drawn(f.DriftOffsetCm, noise),
    };

    private static double Drawn(double[]? range, SeededNoise noise) => range is null ? 0 : noise.Between(range[0], range[1]);

    private static void Demand(JudgedPlan plan)
    {
        var wrong = new List<string>();
        if (plan.Riders is < 1 or > 500) wrong.Add($"riders: 1 to 500 are allowed, not {plan.Riders}");
        if (plan.ClipsEach is < 1 or > 100) wrong.Add($"clips_each: 1 to 100 are allowed, not {plan.ClipsEach}");
        Share(wrong, "wrong_answers_pct", plan.WrongAnswersPct);
        foreach (var (fault, i) in plan.Faults.Select((f, i) => (f, i)))
        {
            var name = fault.Fault.ToTerm();
            Share(wrong, $"{name}: share_pct", fault.SharePct);
            if (plan.Faults.Take(i).Any(f => f.Fault == fault.Fault)) wrong.Add($"{name} stands twice; once is allowed");
            if (fault.With is { } with && plan.Faults.Take(i).All(f => f.Fault != with)) wrong.Add($"{name}: with: a fault before it in the list is allowed, not {with.ToTerm()}");
            if (fault.With is null != fault.ShareWithPct is null) wrong.Add($"{name}: with and share_with_pct go together");
            else if (fault.ShareWithPct is { } share) Share(wrong, $"{name}: share_with_pct", share);
            double[]?[] ranges = [fault.ThighSitDeg, fault.RiseCm, fault.TrunkLeanDeg, fault.DriftSwingCm, fault.DriftOffsetCm];
            if (ranges.Any(r => r is not null && (r.Length != 2 || !(r[0] <= r[1])))) wrong.Add($"{name}: a range is two numbers, the smaller first");
        }

        if (wrong.Count > 0) throw new ArgumentException($"The judged season cannot be made: {string.Join("; ", wrong)}.", nameof(plan));
    }

    private static void Share(List<string> wrong, string name, double pct)
    {
        if (!(pct is >= 0 and <= 100)) wrong.Add(FormattableString.Invariant($"{name}: 0 to 100 is allowed, not {pct}"));
    }
}
