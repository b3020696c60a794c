namespace GaitSeat.Vision.Import;

/// <summary>Something about one node that cannot be imported; <see cref="GraphImporter"/> adds which node and which file.</summary>
internal sealed class NodeException(string reason) : Exception(reason)
{
    public static NodeException NotSupported(string what, string found, string supported) =>
        new($"{what} {found} is not supported; supported: {supported}");
}
