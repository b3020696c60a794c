using GaitSeat.Study.Answers;
using GaitSeat.Study.Definition;

namespace GaitSeat.Study.Report.Sections;

/// <summary>What cannot be concluded. It stands in every report, whatever was found.</summary>
internal static class LimitsSection
{
    private static readonly string[] Always =
    [
        "Measures come from video with errors of their own, some common to all strides of a clip (scale, camera); the tool's errors are stated in its accuracy page, mostly on made footage.",
        "Findings hold for the riders, horses, ground, camera places and weeks in these data.",
        "Not advice to lengthen or shorten anyone's stirrups. A length that suits goes with leg, saddle, horse, discipline and confidence; talk to a qualified instructor.",
        "Change stirrups at the halt, with a helper at the horse's head, a hole at a time, and the same on both sides; ride in an approved helmet and boots with a heel; stop at any pain, in rider or horse.",
        "Footage shows people, often children: names here are pseudonyms, and the report should go only where those in it agreed it may go.",
    ];

    public static void Write(ReportBuilder report, IReadOnlyList<StudyResult> results)
    {
        report.Add(new Heading(2, "What cannot be concluded"));
        var kinds = results.Select(r => r.Study.Kind).Distinct().ToArray();
        report.Add(new BulletList([.. kinds.SelectMany(Of), .. Always]));
    }

    private static IEnumerable<string> Of(StudyKind kind) => kind switch
    {
        StudyKind.DoseResponse =>
        [
            "Observational: nobody was told by lot which length to ride at. Length goes with leg length, skill, horse, exercise, day and coach's advice; any of these may be what the outcome really goes with (confounding). That two things go together within a rider is not that one makes the other.",
            "A comparison within riders takes out what is fixed in a rider, such as stature, but not what changes together with the length: a shorter stirrup for jumping is ridden in another exercise.",
            "An error in the length makes the effect look smaller than it is; a length read from the same points as the outcome shares errors with it, which can make an effect where there is none.",
        ],
        StudyKind.BeforeAfter => ["Before and after differ in more than the stirrups: warming up, tiredness, the horse, the exercise. Without riders who kept their length there is nothing to tell these apart."],
        StudyKind.Agreement => ["Agreement is not accuracy: two ways of measuring can agree and both be wrong."],
        StudyKind.Reliability => ["Riders who learn or tire between sessions look like unreliable measurement here."],
        _ => ["Power and precision are those of the assumptions; where riders differ more than believed, more riders are needed."],
    };
}
