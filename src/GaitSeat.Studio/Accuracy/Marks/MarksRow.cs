using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>One line of the table of marks, checked.</summary>
internal sealed class MarksRow
{
    private const int Columns = 14;
    private const int Sha256Digits = 64;
    private readonly string _path;
    private readonly string[] _cells;
    private readonly MarkedPicture _picture;

    /// <exception cref="InvalidDataException">A cell is wrong.</exception>
    public MarksRow(string path, int line, string[] cells)
    {
        (_path, Line, _cells) = (path, line, cells);
        if (cells.Length != Columns) throw Wrong($"has {cells.Length} cells; {Columns} are needed");
        _picture = new()
        {
            Picture = cells[0],
            Sha256 = cells[1],
            TimeSeconds = Optional(2),
            WidthPx = (int)Number(3),
            HeightPx = (int)Number(4),
            Facing = Word(5, Facing.Left, Facing.Right),
            View = Word(6, Enum.GetValues<MarkedView>()),
            RiderTopPx = Number(7),
            RiderBottomPx = Optional(8),
            Pass = (int)Number(9),
            Marks = new Dictionary<BodyPoint, Mark>(),
        };
        Point = Word(10, [.. MarkedPicture.Points]);
        Mark = ReadMark();
        Check();
    }

    public int Line { get; }

    public string Picture => _picture.Picture;

    public double? TimeSeconds => _picture.TimeSeconds;

    public int Pass => _picture.Pass;

    public BodyPoint Point { get; }

    public Mark Mark { get; }

    /// <summary>Whether all that is not about the point is alike.</summary>
    public bool SamePictureAs(MarksRow other) => _picture with { Marks = other._picture.Marks } == other._picture;

    public MarkedPicture With(IReadOnlyDictionary<BodyPoint, Mark> marks) => _picture with { Marks = marks };

    public InvalidDataException Wrong(string what) => new($"'{_path}', line {Line} {what}.");

    private Mark ReadMark()
    {
        var visibility = Word(13, Enum.GetValues<MarkVisibility>());
        if (visibility == MarkVisibility.Hidden) return _cells[11].Length + _cells[12].Length == 0 ? new(PointPx.Missing, visibility) : throw Wrong("gives a place to a hidden point");
        return new(new(Number(11), Number(12)), visibility);
    }

    private void Check()
    {
        if (Picture.Length == 0 || Path.GetFileName(Picture) != Picture) throw Wrong($"names the picture '{Picture}'; a file name without a folder is needed");
        if (_picture.Sha256.Length != Sha256Digits || !_picture.Sha256.All(char.IsAsciiHexDigitLower)) throw Wrong($"has '{_picture.Sha256}' for a SHA-256; {Sha256Digits} lower-case hex digits are needed");
        if (Pass is not (1 or 2)) throw Wrong($"has pass {Pass}; allowed are 1 and 2");
        if (_picture.RiderSpanPx <= 0) throw Wrong("puts the rider's sole above the head");
        if (Mark.Visibility != MarkVisibility.Hidden && !new BoxPx(0, 0, _picture.WidthPx, _picture.HeightPx).Contains(Mark.Px))
            throw Wrong($"puts the {Point.ToTerm()} at {Mark.Px.X}, {Mark.Px.Y}, outside the picture of {_picture.WidthPx} x {_picture.HeightPx} px");
    }

    private double? Optional(int column) => _cells[column].Length == 0 ? null : Number(column);

    private double Number(int column) =>
        double.TryParse(_cells[column], NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            ? value
            : throw Wrong($"has '{_cells[column]}' in column {column + 1}; a number is needed");

    private T Word<T>(int column, params T[] allowed)
        where T : struct, Enum
    {
        foreach (var value in allowed)
            if (value.ToTerm() == _cells[column]) return value;
        throw Wrong($"has '{_cells[column]}' in column {column + 1}; allowed are {string.Join(", ", allowed.Select(a => a.ToTerm()))}");
    }
}
