using GaitSeat.Study.Definition;
using GaitSeat.Study.Tests.Answers;

namespace GaitSeat.Study.Tests.Definition;

public sealed class StudyCheckTests
{
    [Fact]
    public void GoodStudy_HasNoMistakes() => Assert.Empty(StudyCheck.Of(Season.Study, Season.Table.Columns));

    private static readonly Dictionary<string, StudySettings> Bad = new()
    {
        ["question: is empty"] = Season.Study with { Question = " " },
        ["outcomes: is empty"] = Season.Study with { Outcomes = [] },
        ["'rise_height_cm' stands there 2 times"] = Season.Study with { Outcomes = ["rise_height_cm", "rise_height_cm"] },
        ["outcomes: unknown column 'rise_cm'; there are rise_height_cm, rise_height_cm_se"] = Season.Study with { Outcomes = ["rise_cm"] },
        ["measurement_error: unknown column 'coach_cm_se'"] = Season.Study with { Outcomes = ["coach_cm"] },
        ["exposure: column 'gait' holds texts; a column of numbers is needed"] = Season.Study with { Exposure = "gait" },
        ["adjustment: unknown column 'speed'"] = Season.Study with { Adjustment = ["speed"] },
        ["rider: unknown column 'name'"] = Season.Study with { Rider = "name" },
        ["horse: unknown column 'pony'"] = Season.Study with { Horse = "pony" },
        ["filters: 'gait is trot' is no condition"] = Season.Study with { Filters = ["gait is trot"] },
        ["filters: unknown column 'tempo'"] = Season.Study with { Filters = ["tempo = 3"] },
        ["filters: 'gait > 3' asks for the size of 'gait', a column of texts"] = Season.Study with { Filters = ["gait > 3"] },
        ["other_steps: 'hole' is no step"] = Season.Study with { OtherSteps = ["hole"] },
        ["average_over: unknown column 'clip'"] = Season.Study with { Kind = StudyKind.Agreement, Comparator = "coach_cm", AverageOver = "clip" },
        ["after: 'gait rises' asks for the size of 'gait'"] = Season.Study with { Kind = StudyKind.BeforeAfter, After = "gait rises" },
        ["stride_counts: '0' is no number of strides"] = Season.Study with { Kind = StudyKind.Planning, StrideCounts = ["0"] },
        ["after: '' is no condition"] = Season.Study with { Kind = StudyKind.BeforeAfter },
        ["comparator: is empty"] = Season.Study with { Kind = StudyKind.Agreement },
        ["rider_counts: 'many' is no number of riders"] = Season.Study with { Kind = StudyKind.Planning, RiderCounts = ["many"] },
    };

    public static TheoryData<string> Messages => [.. Bad.Keys];

    [Theory]
    [MemberData(nameof(Messages))]
    public void Mistake_IsNamedByItsKey(string message) =>
        Assert.Contains(StudyCheck.Of(Bad[message], Season.Table.Columns), m => m.ToString().Contains(message, StringComparison.Ordinal));

    [Fact]
    public void SeveralMistakes_AreFoundAtOnce() => Assert.Equal(3, StudyCheck.Of(Season.Study with { Exposure = "x", Rider = "y", Filters = ["z = 1"] }, Season.Table.Columns).Count);

    [Fact]
    public void ColumnsOfDifferentLength_AreRefused() => Assert.Contains(
        "column 'a' has 2 values; the table has 3 rows", Assert.Throws<ArgumentException>(() => new StudyTable(3, new Dictionary<string, double[]> { ["a"] = [1, 2] }, new Dictionary<string, string?[]>())).Message, StringComparison.Ordinal);
}
