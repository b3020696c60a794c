using GaitSeat.Vision.Models;

namespace GaitSeat.Benchmarks;

/// <summary>Models on a fixed input, each so many times, shared out over one-thread sessions side by side. Loaded and warm before it runs.</summary>
internal sealed class InferenceFloor : IDisposable
{
    private readonly List<(OnnxSession[] Sessions, float[] Input, int Times)> _models = [];

    /// <param name="times">Each model, and how often it runs.</param>
    public InferenceFloor(ModelStore models, int workers, params (ModelSource Model, int Times)[] times)
    {
        foreach (var (model, count) in times)
        {
            var file = models.Ensure(model);
            OnnxSession[] sessions = [.. Enumerable.Range(0, workers).Select(_ => new OnnxSession(file, 1))];
            float[] input = [.. Enumerable.Repeat(0.5f, sessions[0].InputLength)];
            foreach (var session in sessions) session.Run(input, 1);
            _models.Add((sessions, input, count));
        }
    }

    public void Run()
    {
        foreach (var (sessions, input, times) in _models)
        {
            Parallel.For(0, sessions.Length, new ParallelOptions { MaxDegreeOfParallelism = sessions.Length }, s =>
            {
                for (var i = s; i < times; i += sessions.Length) sessions[s].Run(input, 1);
            });
        }
    }

    public void Dispose()
    {
        foreach (var session in _models.SelectMany(m => m.Sessions)) session.Dispose();
    }
}
