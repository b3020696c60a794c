using System.Text.Json;

namespace GaitSeat.Footage.Tests;

public sealed class StreamLookParserTests
{
    private static StreamLook Parse(string stream, string frames = "[]") =>
        StreamLookParser.Parse(JsonDocument.Parse($$"""{"format":{"format_name":"mov,mp4"},"frames":{{frames}},"streams":[{"index":0,"codec_type":"video","time_base":"1001/30000",{{stream}}}]}""").RootElement)!;

    /// <summary>ffprobe's angle is counter-clockwise and may have either sign.</summary>
    [Theory]
    [InlineData(-90, 90)]
    [InlineData(90, 270)]
    [InlineData(270, 90)]
    [InlineData(-270, 270)]
    [InlineData(180, 180)]
    [InlineData(-180, 180)]
    [InlineData(0, 0)]
    [InlineData(360, 0)]
    [InlineData(45, 0)]
    public void DisplayMatrix_ClockwiseQuarterTurn(int said, int clockwise) =>
        Assert.Equal(clockwise, Parse($$""" "side_data_list":[{"side_data_type":"Display Matrix","rotation":{{said}}}] """).RotationDegrees);

    [Theory]
    [InlineData("progressive", "0", false)]
    [InlineData("tt", "0", true)]
    [InlineData("bt", "0", true)]
    [InlineData("unknown", "1", true)]
    [InlineData("unknown", "0", false)]
    public void Interlacing_FromStreamOrFrame(string order, string frame, bool interlaced) =>
        Assert.Equal(interlaced, Parse($$""" "field_order":"{{order}}" """, $$"""[{"stream_index":0,"interlaced_frame":{{frame}}}]""").Interlaced);

    [Fact]
    public void Origin_IsTheEarliestFrame() =>
        Assert.Equal(-3, Parse(""" "start_pts":7 """, """[{"stream_index":0,"best_effort_timestamp":4},{"stream_index":0,"best_effort_timestamp":-3},{"stream_index":1,"pts":-9}]""").Stream.OriginTicks);

    [Fact]
    public void Clock_IsKeptAsARatio() => Assert.Equal(1001 * 30.0 / 30000, Parse(""" "width":1 """).Stream.ToSeconds(30));

    [Theory]
    [InlineData("0/0", "25/1", 25.0)]
    [InlineData("30000/1001", "60/1", 30000 / 1001.0)]
    [InlineData("0/0", "0/0", null)]
    public void Rate_MeanFirst(string mean, string nominal, double? rate) =>
        Assert.Equal(rate, Parse($$""" "avg_frame_rate":"{{mean}}","r_frame_rate":"{{nominal}}" """).RateHz);
}
