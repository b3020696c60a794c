namespace GaitSeat.Studio;

/// <summary>How a part that is drawn from the side is built in depth.</summary>
/// <param name="Depth">Half its breadth across the horse over half its breadth along the picture.</param>
/// <param name="Centred">Lies on the middle plane of horse and rider, whatever side its picture is laid on.</param>
/// <param name="BothSides">Its like hangs on the other side.</param>
internal readonly record struct Build(float Depth, bool Centred = false, bool BothSides = false);

/// <summary>A part of horse, tack or rider: as a card seen from the side, and as a solid for views from anywhere. Each is made when first asked for.</summary>
internal sealed class Part(Loft loft, float texelsPerM, Build build)
{
    private readonly Lazy<Sprite> _card = new(() => Sprite.Paint(loft, texelsPerM));
    private readonly Lazy<Solid> _solid = new(() => Solid.Of(loft, texelsPerM, build.Depth));

    public Build Build { get; } = build;

    public Sprite Card => _card.Value;

    public Solid Solid => _solid.Value;
}
