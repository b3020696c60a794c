using Microsoft.ML;
using Microsoft.ML.Data;

namespace GaitSeat.Faults.Training;

/// <summary>A trained scorer: raw scores, the higher the more probable; see <see cref="PlattCalibration"/> for what they mean.</summary>
internal sealed class Scorer(MLContext ml, FeaturePreparation preparation, ITransformer model, DataViewSchema schema)
{
    private const string ScoreColumn = "Score";

    internal FeaturePreparation Preparation { get; } = preparation;

    internal double[] Scores(IReadOnlyList<double[]> vectors)
    {
        if (vectors.Count == 0) return [];
        var rows = vectors.Select(v => new ScorerInput { Features = Preparation.Apply(v) }).ToArray();
        var data = ml.Data.LoadFromEnumerable(rows, ScorerInput.Schema(Preparation.Width));
        return [.. model.Transform(data).GetColumn<float>(ScoreColumn).Select(s => (double)s)];
    }

    /// <summary>The model as ML.NET saves it, made the same for the same model.</summary>
    internal byte[] ToBytes()
    {
        using var stream = new MemoryStream();
        ml.Model.Save(model, schema, stream);
        return StableZip.Of(stream.ToArray());
    }

    /// <exception cref="FaultModelException">The bytes are no model.</exception>
    internal static Scorer Load(byte[] bytes, FeaturePreparation preparation)
    {
        var ml = new MLContext(0);
        try
        {
            using var stream = new MemoryStream(bytes);
            return new(ml, preparation, ml.Model.Load(stream, out var schema), schema);
        }
        catch (Exception e) when (e is FormatException or InvalidDataException or IOException or InvalidOperationException or ArgumentException or NullReferenceException)
        {
            throw new FaultModelException($"The model file is damaged ({e.Message}).", e);
        }
    }
}

/// <summary>A fault model that cannot be used. The rules stay in force.</summary>
public sealed class FaultModelException(string message, Exception? inner = null) : Exception(message, inner);
