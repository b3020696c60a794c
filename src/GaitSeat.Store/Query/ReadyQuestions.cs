namespace GaitSeat.Store;

/// <summary>A question with its answer's SQL, to be asked by name.</summary>
public sealed record ReadyQuestion(string Name, string Question, string Sql);

/// <summary>Questions that are often asked of a season; also examples to start one's own from.</summary>
public static class ReadyQuestions
{
    public static IReadOnlyList<ReadyQuestion> All { get; } =
    [
        new(
            "strides-by-rider-and-length",
            "How many strides are there of each rider at each stirrup length, and how did she rise?",
            """
            SELECT rider, leather_cm, stirrup_hole, count(*) AS strides, count(DISTINCT clip_key) AS clips,
                   avg(rise_height_cm) AS rise_height_cm, avg(rise_height_pct_leg) AS rise_height_pct_leg,
                   avg(thigh_angle_sit_deg) AS thigh_angle_sit_deg, avg(stirrup_drift_swing_cm) AS stirrup_drift_swing_cm
            FROM strides GROUP BY ALL ORDER BY rider, leather_cm, stirrup_hole
            """),
        new(
            "rise-by-day",
            "How does each rider's rise go over the season, day by day?",
            """
            SELECT rider, session_date, horse, count(*) AS strides, avg(rise_height_cm) AS rise_height_cm, stddev_samp(rise_height_cm) AS rise_height_cm_sd
            FROM strides GROUP BY ALL ORDER BY rider, session_date, horse
            """),
        new(
            "seat-by-horse",
            "Does a rider sit differently on different horses?",
            """
            SELECT rider, horse, count(*) AS strides, avg(stride_duration_s) AS stride_duration_s, avg(rise_height_pct_leg) AS rise_height_pct_leg,
                   avg(trunk_lean_sit_deg) AS trunk_lean_sit_deg
            FROM strides GROUP BY ALL ORDER BY rider, horse
            """),
        new(
            "left-out",
            "What was left out, and why?",
            "SELECT scope, reason, sum(count)::BIGINT AS left_out, count(DISTINCT clip_key) AS clips FROM skipped GROUP BY ALL ORDER BY scope, left_out DESC, reason"),
        new(
            "clips-set-aside",
            "Which clips could not be measured?",
            "SELECT clip_file, reason, detail FROM clips WHERE status = 'set_aside' ORDER BY clip_file"),
        new(
            "findings-by-rider",
            "Which faults were flagged, for whom, how often? Prompts for the coach's eye, not verdicts.",
            """
            SELECT rider, fault, count(*) AS findings, count(DISTINCT clip_key) AS clips, avg(probability) AS mean_probability
            FROM findings GROUP BY ALL ORDER BY rider, findings DESC, fault
            """),
        new(
            "stirrup-changes",
            "Where do the stirrups seem to have been changed within a day, and what changed with them?",
            """
            SELECT session_date, rider, horse, direction, measure, unit, "first", "second", difference, difference_low95, difference_high95, chance_probability
            FROM sessions WHERE what = 'stirrup_change' ORDER BY session_date, rider, horse, measure
            """),
        new(
            "left-against-right",
            "Where does a rider differ between the reins by more than the interval allows?",
            """
            SELECT session_date, rider, horse, what, measure, unit, difference, difference_low95, difference_high95
            FROM sessions WHERE what <> 'stirrup_change' AND (difference_low95 > 0 OR difference_high95 < 0) ORDER BY session_date, rider, horse, measure
            """),
        new(
            "runs",
            "With which settings and models was the dataset measured?",
            """
            SELECT pipeline_hash, model_hash, software_version, schema_version, count(*) AS clips, sum(strides)::BIGINT AS strides
            FROM clips GROUP BY ALL ORDER BY clips DESC, pipeline_hash, model_hash
            """),
    ];
}
