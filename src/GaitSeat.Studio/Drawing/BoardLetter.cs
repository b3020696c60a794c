namespace GaitSeat.Studio;

/// <summary>The letters of a riding arena, drawn on a coarse grid and softened.</summary>
internal sealed class BoardLetter
{
    private const int Columns = 5;
    private const int Rows = 7;

    private static readonly Dictionary<char, string> Shapes = new()
    {
        ['A'] = ".###.#...##...#######...##...##...#",
        ['K'] = "#...##..#.#.#..##...#.#..#..#.#...#",
        ['E'] = "######....#....####.#....#....#####",
        ['H'] = "#...##...##...#######...##...##...#",
        ['C'] = ".###.#...##....#....#....#...#.###.",
        ['M'] = "#...###.###.#.##.#.##...##...##...#",
        ['B'] = "####.#...##...#####.#...##...#####.",
        ['F'] = "######....#....####.#....#....#....",
    };

    private readonly string _shape;

    /// <exception cref="ArgumentException">Not a letter of the arena.</exception>
    public BoardLetter(string letter)
    {
        if (letter.Length != 1 || !Shapes.TryGetValue(letter[0], out var shape))
            throw new ArgumentException($"board_letter is '{letter}'; allowed: {string.Join(", ", Shapes.Keys)}.", nameof(letter));
        _shape = shape;
    }

    /// <summary>How much ink there is at a place on the board (0..1 from its left and top edge).</summary>
    public float InkAt(float across, float down)
    {
        var x = (across - 0.22f) / 0.56f * Columns - 0.5f;
        var y = (down - 0.16f) / 0.68f * Rows - 0.5f;
        var (ix, iy) = ((int)MathF.Floor(x), (int)MathF.Floor(y));
        var (u, v) = (x - ix, y - iy);
        var soft = (Cell(ix, iy) * (1 - u) + Cell(ix + 1, iy) * u) * (1 - v) + (Cell(ix, iy + 1) * (1 - u) + Cell(ix + 1, iy + 1) * u) * v;
        return Tint.Step(0.40f, 0.60f, soft);
    }

    private float Cell(int x, int y) => x is >= 0 and < Columns && y is >= 0 and < Rows && _shape[y * Columns + x] == '#' ? 1 : 0;
}
