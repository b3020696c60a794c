using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>What the camera sees in a direction where there is no horse: sky, trees, fence, board, sand. Straight lines in the world stay straight.</summary>
internal sealed class Scenery
{
    private const float GrassAfterFenceM = 5;
    private const float TreesAfterFenceM = 16;
    private const float PostEveryM = 2.6f;
    private const float BoardAtM = 2.3f;

    /// <summary>Where along its own fence each further side begins: far from the other sides, so that nothing repeats.</summary>
    private const float SideStartM = 137;

    private readonly ValueNoise _noise;
    private readonly Vector3 _sand;
    private readonly Vector3 _fence;
    private readonly BoardLetter _letter;
    private readonly float _fenceDepth;
    private readonly float _focalPx;
    private readonly float _skyTone;
    private readonly bool _fencedIn;

    public Scenery(ClipScript script, double farthestM, double focalPx)
    {
        _noise = new ValueNoise(script.Seed + 404);
        (_sand, _fence, _letter) = (Tint.Parse(script.Look.Sand), Tint.Parse(script.Look.Fence), new BoardLetter(script.Look.BoardLetter));
        _fenceDepth = (float)farthestM + 4.2f;
        _fencedIn = script.Way != Way.Usual;
        _focalPx = (float)focalPx;
        _skyTone = _noise.At(0.5f, 77.5f);
    }

    /// <param name="azimuth">Direction, rad, + right.</param>
    /// <param name="slope">Fall per metre of ground distance, + down.</param>
    public Vector3 At(float azimuth, float slope)
    {
        const float Eye = (float)StudioCamera.HeightM;
        // A long way round shows all four sides of the arena, each with its own posts and boards.
        var side = _fencedIn ? MathF.Round(azimuth / (MathF.PI / 2)) : 0;
        var (sin, cos) = MathF.SinCos(azimuth - side * (MathF.PI / 2));
        var toFence = _fenceDepth / cos;
        var fenceUp = Eye - slope * toFence;
        var fence = FenceAt(_fenceDepth * sin / cos + SideStartM * side, fenceUp, toFence / _focalPx);
        (sin, cos) = MathF.SinCos(azimuth);
        if (fence.W >= 1) return fence.AsVector3();
        return fence.W > 0 ? Tint.Mix(Behind(azimuth, slope, sin, cos, toFence), fence.AsVector3(), fence.W) : Behind(azimuth, slope, sin, cos, toFence);
    }

    private Vector3 Behind(float azimuth, float slope, float sin, float cos, float toFence)
    {
        const float Eye = (float)StudioCamera.HeightM;
        var ground = slope > 1e-4f ? Eye / slope : float.MaxValue;
        if (ground < toFence) return Sand(ground * sin, ground * cos, ground);
        var toTrees = _fencedIn ? toFence + TreesAfterFenceM : (_fenceDepth + TreesAfterFenceM) / cos;
        if (ground < toTrees) return Grass(ground * sin, ground * cos, ground, toFence);
        return TreesOrSky(azimuth, Eye - slope * toTrees, toTrees, slope);
    }

    // Colour and coverage; edges are as soft as a pixel is wide there.
    private Vector4 FenceAt(float x, float up, float pixelM)
    {
        if (up is < -0.02f or > 1.45f) return Vector4.Zero;
        var board = x - BoardAtM - SideStartM * MathF.Round(x / SideStartM);
        if (Cover(0.27f - MathF.Abs(board), pixelM) * Cover(0.335f - MathF.Abs(up - 0.615f), pixelM) is > 0 and var boardCover) return new Vector4(Board(x, up, board), boardCover);
        var wear = 0.86f + 0.18f * _noise.Layers(1.5f * x, 14 * up, 3);
        var fromPost = x - PostEveryM * MathF.Round(x / PostEveryM);
        var post = Cover(0.065f - MathF.Abs(fromPost), pixelM) * Cover(1.40f - up, pixelM) * Cover(up, pixelM);
        if (post > 0) return new Vector4(_fence * (wear * (0.92f - 2.2f * fromPost)), post);
        foreach (var rail in (ReadOnlySpan<float>)[1.28f, 0.80f, 0.34f])
        {
            var cover = Cover(0.055f - MathF.Abs(up - rail), pixelM);
            if (cover > 0) return new Vector4(_fence * (wear * (0.97f + 1.5f * (up - rail))), cover);
        }

        return Vector4.Zero;
    }

    private Vector3 Board(float x, float up, float fromMiddle)
    {
        var ink = _letter.InkAt((fromMiddle + 0.27f) / 0.54f, (0.95f - up) / 0.67f);
        return Tint.Mix(new Vector3(0.93f, 0.93f, 0.90f), new Vector3(0.10f, 0.11f, 0.14f), ink) * (0.95f + 0.06f * _noise.At(6 * x, 6 * up));
    }

    private static float Cover(float insideM, float pixelM) => Math.Clamp(insideM / pixelM + 0.5f, 0, 1);

    private Vector3 Sand(float x, float depth, float distance)
    {
        // Features smaller than the footprint of a pixel would flicker as the camera turns: they fade out.
        var footprint = distance * distance / ((float)StudioCamera.HeightM * _focalPx);
        float Detail(float size, float across) => (_noise.At(x / across + 31, depth / size - 12) - 0.5f) * Tint.Step(0.4f, 1.6f, size / footprint);
        var tone = 1 + 0.16f * (_noise.Layers(0.35f * x, 0.5f * depth, 3) - 0.5f) + 0.16f * Detail(0.55f, 0.5f) + 0.22f * Detail(0.18f, 0.14f) + 0.22f * Detail(0.07f, 0.05f) + 0.16f * Detail(0.03f, 0.022f);
        // Hoof prints: darker hollows.
        var prints = Tint.Step(0.66f, 0.80f, _noise.At(3.1f * x + 5, 2.6f * depth)) * Tint.Step(0.3f, 1.2f, 0.35f / footprint);
        return _sand * (tone * (1 - 0.20f * prints));
    }

    private Vector3 Grass(float x, float depth, float distance, float toFence)
    {
        var tone = 0.85f + 0.3f * _noise.Layers(0.8f * x, 0.35f * depth, 3);
        var verge = Tint.Step(0, GrassAfterFenceM, distance - toFence);
        return Tint.Mix(new Vector3(0.45f, 0.47f, 0.24f), new Vector3(0.36f, 0.45f, 0.20f), verge) * tone;
    }

    private Vector3 TreesOrSky(float azimuth, float up, float distance, float slope)
    {
        var x = azimuth * distance;
        var crown = 6.0f + 5.5f * _noise.Layers(0.13f * x + 40, 3, 3) + 1.1f * _noise.At(0.9f * x, 9) + 0.5f * _noise.At(2.6f * x, 0.8f * up);
        var sky = Sky(azimuth, slope);
        var edge = Tint.Step(crown - 0.12f, crown + 0.12f, up);
        if (edge >= 1) return sky;
        // Crowns a few metres wide, boughs, leaves: each lit on its upper left, so the noise is also read a step up and to the left.
        float Mass(float mx, float my) => _noise.Layers(0.42f * mx + 11, 0.55f * my + 3, 3) + 0.28f * _noise.At(1.9f * mx, 2.3f * my);
        var clumps = Mass(x, up);
        var lit = clumps - Mass(x - 0.35f, up + 0.45f);
        var leaf = 0.6f * _noise.At(5.5f * x, 6.5f * up) + 0.4f * _noise.At(12 * x, 14 * up);
        var light = Math.Clamp(0.40f + 2.2f * lit + 0.9f * (clumps - 0.62f) + 0.55f * (leaf - 0.5f) + 0.015f * up, 0, 1);
        var hue = _noise.At(0.16f * x + 60, 2.5f);
        var tree = Tint.Mix(new Vector3(0.10f, 0.15f, 0.09f), Tint.Mix(new Vector3(0.36f, 0.49f, 0.22f), new Vector3(0.50f, 0.52f, 0.24f), hue), light);
        // Haze, and dark between the trunks near the ground.
        tree = Tint.Mix(tree, new Vector3(0.55f, 0.62f, 0.62f), 0.14f);
        tree *= 0.72f + 0.28f * Tint.Step(0.0f, 2.2f, up + 0.8f * (clumps - 0.5f));
        return Tint.Mix(tree, sky, edge);
    }

    private Vector3 Sky(float azimuth, float slope)
    {
        var blue = Tint.Mix(new Vector3(0.80f, 0.87f, 0.94f), new Vector3(0.52f, 0.69f, 0.88f), Tint.Step(0.05f, 0.6f, -slope));
        var cloud = Tint.Step(0.42f, 0.75f, _noise.Layers(3.2f * azimuth + 8, -9 * slope, 4) + 0.15f * (_skyTone - 0.5f));
        return Tint.Mix(blue, new Vector3(0.95f, 0.96f, 0.97f), 0.8f * cloud);
    }
}
