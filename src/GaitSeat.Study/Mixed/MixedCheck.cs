using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed.Solving;

namespace GaitSeat.Study.Mixed;

/// <summary>What a mixed model asks of its rows.</summary>
internal static class MixedCheck
{
    public static void Of(MixedData data)
    {
        if (data.Rows == 0) throw new StudyException(StudyProblem.TooFewRows, "no rows are left; loosen the filters");
        DataCheck.Finite("outcome", data.Outcome);
        DataCheck.SameLength(data.Rows, data.Fixed);
        if (data.Rows <= data.Fixed.Count)
            throw new StudyException(StudyProblem.TooFewRows, $"{data.Rows} rows for {data.Fixed.Count} fixed effects; more rows are needed");
        if (data.Random.Count == 0) throw new StudyException(StudyProblem.BadData, "no grouping factor; a mixed model needs one, such as the rider");
        foreach (var term in data.Random) Term(data, term);
        Different(data.Random);
        Errors(data);
    }

    private static void Term(MixedData data, RandomTerm term)
    {
        DataCheck.SameLength(data.Rows, term.Groups.Name, term.Groups.LevelOf.Length);
        DataCheck.SameLength(data.Rows, term.Columns);
        if (term.Groups.LevelOf.Any(l => l < 0 || l >= term.Groups.Levels.Count))
            throw new StudyException(StudyProblem.BadData, $"grouping '{term.Groups.Name}' has a level outside 0 to {term.Groups.Levels.Count - 1}");
        var used = term.Groups.LevelOf.Distinct().Count();
        if (used < 2)
            throw new StudyException(StudyProblem.OneLevel, $"grouping '{term.Groups.Name}' has one level ('{term.Groups.Levels[term.Groups.LevelOf[0]]}'); two or more are needed to tell the spread between levels");
        if ((long)used * term.Columns.Count >= data.Rows)
            throw new StudyException(StudyProblem.TooFewRows,
                $"grouping '{term.Groups.Name}' has {used} levels with {term.Columns.Count} random effects each, and there are {data.Rows} rows; more rows than random effects are needed to tell them from the residual");
    }

    /// <summary>Two factors that put the rows together the same way cannot be told apart.</summary>
    private static void Different(IReadOnlyList<RandomTerm> terms)
    {
        for (var t = 1; t < terms.Count; t++)
        {
            for (var s = 0; s < t; s++)
            {
                var (a, b) = (terms[s].Groups, terms[t].Groups);
                var pairs = CellIndex.Of([terms[s], terms[t]]).Levels.Length;
                if (pairs == a.LevelOf.Distinct().Count() && pairs == b.LevelOf.Distinct().Count())
                    throw new StudyException(StudyProblem.Collinear, $"groupings '{a.Name}' and '{b.Name}' put the rows together the same way; leave one of them out");
            }
        }
    }

    private static void Errors(MixedData data)
    {
        if (data.Weights is not null && data.MeasurementVariance is not null)
            throw new StudyException(StudyProblem.BadData, "weights and measurement variances are both given; one of them is allowed");
        if (data.Weights is { } weights)
        {
            DataCheck.SameLength(data.Rows, "weights", weights.Length);
            DataCheck.Positive("weights", weights);
        }

        if (data.MeasurementVariance is { } variances)
        {
            DataCheck.SameLength(data.Rows, "measurement variance", variances.Length);
            DataCheck.NotNegative("measurement variance", variances);
        }
    }
}
