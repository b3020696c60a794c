namespace GaitSeat.Study.Linear;

/// <summary>A named column of a design, one value per row.</summary>
public sealed record DesignColumn(string Name, double[] Values)
{
    public const string InterceptName = "(intercept)";

    public static DesignColumn Intercept(int rows)
    {
        var ones = new double[rows];
        Array.Fill(ones, 1);
        return new(InterceptName, ones);
    }
}
