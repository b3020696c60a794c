using GaitSeat.Pipeline.Watch;
using OpenTelemetry;
using OpenTelemetry.Metrics;

namespace GaitSeat.Cli.Watching;

/// <summary>Sends the worker's metrics by OTLP, where the standard variable <c>OTEL_EXPORTER_OTLP_ENDPOINT</c> says to; nothing leaves the machine without it.</summary>
internal static class Telemetry
{
    public static MeterProvider? Open() =>
        Environment.GetEnvironmentVariable("OTEL_EXPORTER_OTLP_ENDPOINT") is { Length: > 0 }
            ? Sdk.CreateMeterProviderBuilder().AddMeter(WatchMetrics.MeterName).AddOtlpExporter().Build()
            : null;
}
