namespace GaitSeat.Vision.Models;

/// <summary>An ONNX model on disk.</summary>
/// <param name="Name">Name in the <see cref="ModelCatalogue"/>, or the file name of a user's own model.</param>
/// <param name="Path">Full path of the ONNX file.</param>
/// <param name="Sha256">SHA-256 of the ONNX file's bytes, lower-case hex.</param>
public sealed record ModelFile(string Name, string Path, string Sha256);
