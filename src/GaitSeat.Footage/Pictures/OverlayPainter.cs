using GaitSeat.Model;
using GaitSeat.Footage.Pictures.Layers;

namespace GaitSeat.Footage.Pictures;

/// <summary>Draws what was measured into frames: heads blurred, body, plumb line, thigh angle, stride strip. Holds drawing tools: one painter a thread.</summary>
public sealed class OverlayPainter(OverlaySettings settings) : IDisposable
{
    private readonly OverlaySettings _settings = settings ?? throw new ArgumentNullException(nameof(settings));
    private readonly RgbaCanvas _canvas = new();
    private readonly BodyLayer _body = new();
    private readonly PlumbLayer _plumb = new();
    private readonly ThighLayer _thigh = new();
    private readonly MomentLayer _moment = new();
    private readonly StripLayer _strip = new();

    /// <summary>Draws into the frame's own memory.</summary>
    /// <exception cref="ArgumentException">The trace index lies beyond the trace.</exception>
    public void Paint(Frame frame, OverlayScene scene)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(scene);
        if (scene.TraceIndex >= scene.Trace.TimeSeconds.Length)
            throw new ArgumentException($"Trace index {scene.TraceIndex}; the trace has {scene.Trace.TimeSeconds.Length} frames.", nameof(scene));
        if (_settings.BlurHeads) HeadBlur.Apply(frame, HeadBoxes.Of(scene, frame.WidthPx, frame.HeightPx, _settings));
        var view = new PaintView(scene, _settings, frame.WidthPx, frame.HeightPx);
        _canvas.Draw(frame, canvas =>
        {
            if (_settings.ShowPlumbLine) _plumb.Draw(canvas, view);
            if (_settings.ShowBody) _body.Draw(canvas, view);
            if (_settings.ShowThighAngle) _thigh.Draw(canvas, view);
            _moment.Draw(canvas, view);
            if (_settings.ShowStrip) _strip.Draw(canvas, view);
        });
    }

    public void Dispose()
    {
        _body.Dispose();
        _plumb.Dispose();
        _thigh.Dispose();
        _moment.Dispose();
        _strip.Dispose();
        _canvas.Dispose();
    }
}
