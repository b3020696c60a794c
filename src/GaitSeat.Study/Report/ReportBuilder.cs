namespace GaitSeat.Study.Report;

/// <summary>Gathers blocks, numbers and pictures while the sections are written.</summary>
internal sealed class ReportBuilder(string folder, string note)
{
    private const string PictureFolder = "pictures";

    public List<ReportBlock> Blocks { get; } = [];

    public List<NumberLine> Numbers { get; } = [];

    /// <summary>What stands on every picture.</summary>
    public string Note => note;

    public void Add(ReportBlock block) => Blocks.Add(block);

    public void Add(int question, string outcome, params (string Quantity, double Value)[] numbers) =>
        Numbers.AddRange(numbers.Select(n => new NumberLine(question, outcome, n.Quantity, n.Value)));

    /// <param name="name">File name without ending.</param>
    /// <param name="save">Draws to a PNG and an SVG of these names.</param>
    public void Picture(string name, string caption, Action<string, string> save)
    {
        var pictures = Directory.CreateDirectory(Path.Combine(folder, PictureFolder)).FullName;
        save(Path.Combine(pictures, name + ".png"), Path.Combine(pictures, name + ".svg"));
        Blocks.Add(new Picture($"{PictureFolder}/{name}.png", caption));
    }
}
