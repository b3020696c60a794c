using Microsoft.ML.OnnxRuntime;

namespace GaitSeat.Vision.Models;

/// <summary>
/// A user's own body-point model. One form is taken: a picture in, one heat map a point out, 17 points in COCO order
/// (nose, eyes, ears, shoulders, elbows, wrists, hips, knees, ankles; left before right).
/// </summary>
public sealed class UserModel
{
    /// <summary>Points of the COCO order.</summary>
    public const int PointCount = 17;

    private const string Allowed =
        "allowed: one float input [N,H,W,3] or [N,3,H,W] of fixed size, RGB with ImageNet mean and deviation, and a float output "
        + "[N,17,h,w] of heat maps in COCO order, N free or 1";

    private UserModel(ModelFile file, PictureInput input, string heatmapOutput, int[] heatmapShape)
    {
        File = file;
        Input = input;
        HeatmapOutput = heatmapOutput;
        HeatmapRows = heatmapShape[2];
        HeatmapColumns = heatmapShape[3];
    }

    public ModelFile File { get; }

    public PictureInput Input { get; }

    /// <summary>Name of the output with the heat maps.</summary>
    public string HeatmapOutput { get; }

    public int HeatmapRows { get; }

    public int HeatmapColumns { get; }

    /// <summary>What was found in the file, a line each.</summary>
    public IReadOnlyList<string> Description =>
    [
        $"file: {File.Path}",
        $"SHA-256: {File.Sha256}",
        $"input: {Input.WidthPx} x {Input.HeightPx} RGB, {(Input.IsPlanar ? "[N,3,H,W]" : "[N,H,W,3]")}, ImageNet mean and deviation",
        $"output: '{HeatmapOutput}', {PointCount} heat maps of {HeatmapColumns} x {HeatmapRows}, COCO order",
    ];

    /// <summary>Opens a model and runs it once on an empty picture to see what it gives.</summary>
    /// <exception cref="ModelException">There is no such file, it is no ONNX model, or not of the form allowed; the message says which.</exception>
    public static UserModel Open(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        var full = System.IO.Path.GetFullPath(path);
        if (!System.IO.File.Exists(full)) throw new ModelException($"body-point model not found: {full}; {Allowed}");
        try
        {
            var file = new ModelFile(System.IO.Path.GetFileName(full), full, Sha256.OfFile(full));
            using var session = new OnnxSession(file, threads: 1);
            return Describe(file, session);
        }
        catch (ModelException e)
        {
            throw new ModelException($"{e.Message}; {Allowed}", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new ModelException($"body-point model {full} cannot be read: {e.Message}; {Allowed}", e);
        }
        catch (OnnxRuntimeException e)
        {
            throw new ModelException($"body-point model {full} does not run: {e.Message}; {Allowed}", e);
        }
    }

    private static UserModel Describe(ModelFile file, OnnxSession session)
    {
        var input = PictureInput.Of(session.InputShape)
            ?? throw new ModelException($"body-point model {file.Path} has an input of shape [{string.Join(',', session.InputShape)}]");
        var outputs = session.Run(new float[session.InputLength], batch: 1);
        var found = new List<string>();
        foreach (var name in session.OutputNames)
        {
            var shape = outputs.ShapeOf(name).ToArray();
            if (shape is [_, PointCount, > 1, > 1]) return new UserModel(file, input, name, shape);
            found.Add($"'{name}' [{string.Join(',', shape)}]");
        }

        throw new ModelException($"body-point model {file.Path} has the outputs {string.Join(", ", found)}");
    }
}
