using Polly;
using Polly.CircuitBreaker;
using Polly.Retry;

namespace GaitSeat.Pipeline.Watch.Policies;

/// <summary>
/// The circuit breaker of the storage, one for all clips of a worker: open while the disk is full or a share is gone. Clips under way wait and go on when it is
/// back; none is set aside or counted as a failure for it.
/// </summary>
public sealed class StorageBreaker(Storage storage, StorageSettings settings, IWatchVoice voice)
{
    private readonly CircuitBreakerManualControl _control = new();
    private volatile string? _problem;

    /// <summary>What is wrong with the storage; null while the breaker is closed.</summary>
    public string? Problem => _problem;

    /// <summary>Looks at the storage and opens or closes the breaker, saying so when it changes.</summary>
    /// <returns>Whether clips can be done.</returns>
    public async Task<bool> CheckAsync(CancellationToken ct)
    {
        var problem = storage.Problem();
        if (problem is not null && _problem is null)
        {
            _problem = problem;
            await _control.IsolateAsync(ct);
            voice.Paused(problem);
        }
        else if (problem is null && _problem is not null)
        {
            _problem = null;
            await _control.CloseAsync(ct);
            voice.GoesOn("the storage is back");
        }

        return problem is null;
    }

    /// <summary>What went wrong with a read or write: the storage, or only this once.</summary>
    public async Task<Exception> JudgeAsync(Exception error, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(error);
        return await CheckAsync(ct) ? new CanPassException(error.Message, error) : new StorageGoneException(_problem ?? error.Message, error);
    }

    /// <summary>Adds the breaker and, around it, the wait until it closes.</summary>
    public void AddTo(ResiliencePipelineBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        builder
            .AddRetry(new RetryStrategyOptions
            {
                Name = "storage_wait",
                ShouldHandle = new PredicateBuilder().Handle<StorageGoneException>().Handle<BrokenCircuitException>(),
                MaxRetryAttempts = int.MaxValue,
                Delay = TimeSpan.FromSeconds(settings.ProbeSeconds),
                BackoffType = DelayBackoffType.Constant,
                OnRetry = async retry => await CheckAsync(retry.Context.CancellationToken),
            })
            .AddCircuitBreaker(new CircuitBreakerStrategyOptions
            {
                Name = "storage",
                ShouldHandle = new PredicateBuilder().Handle<StorageGoneException>(),
                ManualControl = _control,
            });
    }
}
