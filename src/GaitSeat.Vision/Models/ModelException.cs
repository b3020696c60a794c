namespace GaitSeat.Vision.Models;

/// <summary>A model cannot be used: weights missing or damaged, a graph we cannot import, a file that is no ONNX model. The message names the remedy.</summary>
public sealed class ModelException : Exception
{
    public ModelException()
    {
    }

    public ModelException(string message)
        : base(message)
    {
    }

    public ModelException(string message, Exception innerException)
        : base(message, innerException)
    {
    }
}
