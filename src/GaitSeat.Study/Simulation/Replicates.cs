using System.Runtime.ExceptionServices;

namespace GaitSeat.Study.Simulation;

/// <summary>Independent repetitions on all cores, each with random numbers of its own: the results do not depend on how many cores there are.</summary>
internal static class Replicates
{
    /// <returns>One result per repetition, in order.</returns>
    public static T[] Of<T>(int count, int seed, Func<Random, T> one)
    {
        var master = new Random(seed);
        var seeds = Enumerable.Range(0, count).Select(_ => master.Next()).ToArray();
        return Each(seeds, s => one(new Random(s)));
    }

    /// <summary>The first failure is thrown as it was, not wrapped.</summary>
    public static TResult[] Each<T, TResult>(IReadOnlyList<T> items, Func<T, TResult> one)
    {
        try
        {
            return [.. items.AsParallel().AsOrdered().Select(one)];
        }
        catch (AggregateException e)
        {
            ExceptionDispatchInfo.Throw(e.InnerExceptions[0]);
            throw;
        }
    }
}
