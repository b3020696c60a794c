using GaitSeat.Vision.Models;

namespace GaitSeat.Benchmarks;

/// <summary>Models on a fixed input, each so many times, shared out over callers of one thread side by side. Loaded and warm before it runs.</summary>
internal sealed class InferenceFloor : IDisposable
{
    private readonly List<(OnnxSession[] Sessions, float[] Input, int Times)> _models = [];

    /// <param name="times">Each model, and how often it runs.</param>
    public InferenceFloor(ModelStore models, int workers, params (ModelSource Model, int Times)[] times)
    {
        foreach (var (model, count) in times)
        {
            var sessions = OnnxSession.Several(models.Ensure(model), workers);
            float[] input = [.. Enumerable.Repeat(0.5f, sessions[0].InputLength)];
            foreach (var session in sessions) session.Run(input, 1);
            _models.Add((sessions, input, count));
        }
    }

    /// <summary>One of several equal shares of the whole.</summary>
    public void Run(int share, int shares)
    {
        foreach (var (sessions, input, times) in _models)
        {
            int from = times * share / shares, to = times * (share + 1) / shares;
            Parallel.For(0, sessions.Length, new ParallelOptions { MaxDegreeOfParallelism = sessions.Length }, s =>
            {
                for (var i = from + s; i < to; i += sessions.Length) sessions[s].Run(input, 1);
            });
        }
    }

    public void Dispose()
    {
        foreach (var session in _models.SelectMany(m => m.Sessions)) session.Dispose();
    }
}
