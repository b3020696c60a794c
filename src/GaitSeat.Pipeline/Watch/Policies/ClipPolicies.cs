using GaitSeat.Model;
using GaitSeat.Pipeline.Watch.Children;
using Polly;
using Polly.Retry;
using Polly.Timeout;

namespace GaitSeat.Pipeline.Watch.Policies;

/// <summary>The policies around one clip, outermost first: storage, retry, crash, time_out. What none of them names is not tried again.</summary>
public sealed class ClipPolicies
{
    private static readonly ResiliencePropertyKey<ClipTry> _clip = new("clip");
    private readonly ResiliencePipeline _tries;
    private readonly ResiliencePipeline _limit;
    private readonly WatchSettings _settings;
    private readonly IWatchVoice _voice;

    public ClipPolicies(WatchSettings settings, StorageBreaker breaker, IWatchVoice voice, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(breaker);
        (_settings, _voice) = (settings, voice);
        var builder = new ResiliencePipelineBuilder { Name = "clip", TimeProvider = time };
        breaker.AddTo(builder);
        _tries = builder.AddRetry(Retry(settings.Retry)).AddRetry(Crash(settings.Crash)).Build();
        _limit = new ResiliencePipelineBuilder { Name = "clip_limit", TimeProvider = time }.AddTimeout(TimeOut()).Build();
    }

    /// <param name="clip">What is known of the clip.</param>
    /// <param name="work">Does it once; its costly part goes through <see cref="LimitAsync"/>.</param>
    /// <exception cref="CanPassException">It did not pass in all the tries.</exception>
    /// <exception cref="ClipKilledException">Its process or FFmpeg was ended from outside in all the tries.</exception>
    /// <exception cref="ClipCrashException">The clip brought its process down too often.</exception>
    public Task<ClipReport> RunAsync(ClipTry clip, Func<CancellationToken, Task<ClipReport>> work, CancellationToken ct) => ExecuteAsync(_tries, clip, work, ct);

    /// <summary>Stops the work when it takes longer than a clip of that length may.</summary>
    /// <exception cref="ClipCrashException">It was stopped.</exception>
    public async Task<ClipReport> LimitAsync(ClipTry clip, Func<CancellationToken, Task<ClipReport>> work, CancellationToken ct)
    {
        try
        {
            return await ExecuteAsync(_limit, clip, work, ct);
        }
        catch (TimeoutRejectedException e)
        {
            throw new ClipCrashException(FormattableString.Invariant($"not done within {e.Timeout.TotalSeconds:0} s"));
        }
    }

    /// <summary>How long a clip of a length may take.</summary>
    public static TimeSpan LimitOf(double? lengthSeconds, TimeOutSettings settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        return TimeSpan.FromSeconds(settings.BaseSeconds + settings.SecondsPerSecond * (lengthSeconds ?? settings.UnknownLengthSeconds));
    }

    private RetryStrategyOptions Retry(RetrySettings s) => new()
    {
        Name = "retry",
        ShouldHandle = new PredicateBuilder().Handle<CanPassException>().Handle<ClipKilledException>(),
        MaxRetryAttempts = s.Attempts,
        Delay = TimeSpan.FromSeconds(s.PauseSeconds),
        MaxDelay = TimeSpan.FromSeconds(s.PauseMaximumSeconds),
        BackoffType = DelayBackoffType.Exponential,
        UseJitter = s.Jitter,
        OnRetry = Tell("retry"),
    };

    private RetryStrategyOptions Crash(CrashSettings s) => new()
    {
        Name = "crash",
        ShouldHandle = args => ValueTask.FromResult(args.Outcome.Exception is ClipCrashException { TooOften: false } e && Clip(args.Context).Crashes!.Add(e.Message) < s.Maximum),
        MaxRetryAttempts = s.Maximum,
        Delay = TimeSpan.FromSeconds(s.PauseSeconds),
        BackoffType = DelayBackoffType.Constant,
        OnRetry = Tell("crash"),
    };

    private TimeoutStrategyOptions TimeOut() => new()
    {
        Name = "time_out",
        TimeoutGenerator = args => ValueTask.FromResult(LimitOf(Clip(args.Context).LengthSeconds, _settings.TimeOut)),
    };

    private static async Task<ClipReport> ExecuteAsync(ResiliencePipeline pipeline, ClipTry clip, Func<CancellationToken, Task<ClipReport>> work, CancellationToken ct)
    {
        var context = ResilienceContextPool.Shared.Get(ct);
        context.Properties.Set(_clip, clip);
        try
        {
            return await pipeline.ExecuteAsync(async c => await work(c.CancellationToken), context);
        }
        finally
        {
            ResilienceContextPool.Shared.Return(context);
        }
    }

    private Func<OnRetryArguments<object>, ValueTask> Tell(string policy) => args =>
    {
        Clip(args.Context).Retries++;
        _voice.Retries(Clip(args.Context).File, policy, args.Outcome.Exception!.Message);
        return ValueTask.CompletedTask;
    };

    private static ClipTry Clip(ResilienceContext context) =>
        context.Properties.TryGetValue(_clip, out var clip) ? clip : throw new InvalidOperationException("the policies run around a clip only");
}

/// <summary>What the policies know of a clip and find out about it.</summary>
public sealed class ClipTry(string file)
{
    public string File => file;

    /// <summary>Length of the clip, s; null where it does not tell or nobody asked yet.</summary>
    public double? LengthSeconds { get; set; }

    /// <summary>How often it brought its process down; null until its key is known.</summary>
    public CrashCount? Crashes { get; set; }

    /// <summary>The row of the sheet it was last tried with.</summary>
    public Session? Session { get; set; }

    /// <summary>How often it was tried again in this run.</summary>
    public int Retries { get; set; }
}
