namespace GaitSeat.Study.Mixed.Solving;

/// <summary>Of the θ that mean the same covariance, the one whose Λ have no negative diagonal.</summary>
internal static class Signs
{
    public static double[] Turn(Scaling scaling, double[] theta)
    {
        var turned = (double[])theta.Clone();
        var start = 0;
        foreach (var slopes in scaling.Slopes)
        {
            for (var j = 0; j < slopes.Width; j++)
            {
                if (!(turned[Place(start, j, j)] < 0)) continue;
                for (var i = j; i < slopes.Width; i++) turned[Place(start, i, j)] *= -1;
            }

            start += slopes.Width * (slopes.Width + 1) / 2;
        }

        return turned;
    }

    private static int Place(int start, int i, int j) => start + i * (i + 1) / 2 + j;
}
