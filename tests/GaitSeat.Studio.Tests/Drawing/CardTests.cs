using System.Numerics;

namespace GaitSeat.Studio.Tests;

public sealed class CardTests
{
    private static readonly Patch Patch = new(20, 10, 90, 70);
    private static readonly byte[] Picture = [.. Enumerable.Range(0, 3 * 130 * 90).Select(i => (byte)(i * 7))];

    [Fact]
    public void WhatALaterCardHides_IsLeftOut_AndNoPixelChanges()
    {
        var sprites = new[] { Limb(1), Limb(0.6f), Limb(1) };
        var noise = new SeededNoise(seed: 9, stream: 1);
        Placement Place() => Placement.Between(new(30 + 70 * (float)noise.Uniform(), 20 + 50 * (float)noise.Uniform()), new(30 + 70 * (float)noise.Uniform(), 20 + 50 * (float)noise.Uniform()), 0.4f, 110, facing: 1);
        var cards = Enumerable.Range(0, 12).Select(i => (Sprite: sprites[i % 3], Place: Place(), Dim: 0.7f + 0.02f * i)).ToArray();

        var together = NewCanvas();
        var scene = new CardScene(together, default);
        foreach (var card in cards) scene.Lay(card.Sprite, card.Place, card.Dim);
        scene.Finish();

        var oneByOne = NewCanvas();
        foreach (var card in cards)
        {
            var alone = new CardScene(oneByOne, default);
            alone.Lay(card.Sprite, card.Place, card.Dim);
            alone.Finish();
        }

        Assert.Equal(Pixels(oneByOne), Pixels(together));
        Assert.Contains(Enumerable.Range(0, Patch.Height), y => together.Hiding.Row(y, 0, Patch.Width).ContainsAnyInRange((byte)2, (byte)12));
    }

    private static Canvas NewCanvas()
    {
        var canvas = new Canvas();
        canvas.Begin(Patch, Picture, pictureWidthPx: 130);
        return canvas;
    }

    // Without the coverage, which is nobody's concern in a picture.
    private static Vector3[] Pixels(Canvas canvas) =>
        [.. Enumerable.Range(0, Patch.Height).SelectMany(y => canvas.Row(y, 0, Patch.Width).ToArray()).Select(p => p.AsVector3())];

    private static Sprite Limb(float opacity) =>
        Sprite.Paint(new Loft((x, y) => new(new Vector3(0.5f + x, 0.4f, 0.3f + y), 0.5f, opacity), new(-0.05f, 0, 0), new(0, 0.08f, 0.07f), new(0.4f, 0.06f, 0.05f), new(0.45f, 0, 0)), texelsPerM: 140);
}
