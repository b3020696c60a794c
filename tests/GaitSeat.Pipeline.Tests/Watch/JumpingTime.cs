using Microsoft.Extensions.Time.Testing;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>A clock whose hands can be put, as a real one: seconds that are counted run on regardless. (The hands of <see cref="FakeTimeProvider"/> take its counter with them.)</summary>
internal sealed class JumpingTime(DateTimeOffset start) : FakeTimeProvider(start)
{
    public TimeSpan Jumped { get; set; }

    public override DateTimeOffset GetUtcNow() => base.GetUtcNow() + Jumped;

    public override long GetTimestamp() => base.GetUtcNow().Ticks;
}
