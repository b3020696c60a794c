namespace GaitSeat.Vision.Import;

/// <summary>An attribute of an ONNX node. Field and type numbers are those of <c>AttributeProto</c> in onnx.proto.</summary>
internal sealed class OnnxAttribute
{
    private OnnxAttribute(ProtoWriter message) => Message = message;

    public ProtoWriter Message { get; }

    public static OnnxAttribute Of(string name, float value) => new(Named(name).Float(2, value).Int(20, 1));

    public static OnnxAttribute Of(string name, int value) => new(Named(name).Int(3, value).Int(20, 2));

    public static OnnxAttribute Of(string name, string value) => new(Named(name).Text(4, value).Int(20, 3));

    public static OnnxAttribute Of(string name, int[] values)
    {
        var message = Named(name);
        foreach (var v in values) message.Int(8, v);
        return new OnnxAttribute(message.Int(20, 7));
    }

    private static ProtoWriter Named(string name) => new ProtoWriter().Text(1, name);
}
