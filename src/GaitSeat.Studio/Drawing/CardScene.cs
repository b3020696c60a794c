namespace GaitSeat.Studio;

/// <summary>Parts as cards in the picture plane: right for views from the side. They are drawn in the end, each only where no later one hides it.</summary>
internal sealed class CardScene(Canvas canvas, View view) : IScene
{
    private readonly List<Card> _cards = [];

    public void Draw(Part part, PlanePoint first, double firstNear, PlanePoint second, double secondNear, float length, float size, float dim) =>
        Lay(part.Card, view.Between(first, firstNear, second, secondNear, length, size), dim);

    /// <summary>Lays a card on those before it, 255 at most.</summary>
    public void Lay(Sprite sprite, Placement place, float dim) => _cards.Add(new(sprite, place, dim));

    public void Finish()
    {
        canvas.Hiding.Clear(canvas.Width, canvas.Height);
        for (var i = _cards.Count; i > 0; i--) _cards[i - 1].Hide(canvas, checked((byte)i));
        for (var i = 1; i <= _cards.Count; i++) _cards[i - 1].Draw(canvas, (byte)i);
    }
}
