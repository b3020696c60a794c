namespace GaitSeat.Vision.Flow;

/// <summary>A symmetric 2x2 matrix: a structure tensor, an information or a covariance matrix.</summary>
internal readonly record struct Tensor(double Xx, double Xy, double Yy)
{
    public double Determinant => (Xx * Yy) - (Xy * Xy);

    /// <summary>Sum of the eigenvalues.</summary>
    public double Trace => Xx + Yy;

    /// <summary>Larger and smaller eigenvalue.</summary>
    public (double Large, double Small) Eigenvalues
    {
        get
        {
            var half = (Xx + Yy) / 2;
            var root = Math.Sqrt(((Xx - Yy) * (Xx - Yy) / 4) + (Xy * Xy));
            return (half + root, half - root);
        }
    }

    public Tensor Inverse
    {
        get
        {
            var d = 1 / Determinant;
            return new(Yy * d, -Xy * d, Xx * d);
        }
    }

    public static Tensor operator *(Tensor t, double k) => new(t.Xx * k, t.Xy * k, t.Yy * k);

    public Tensor PlusIdentity(double k) => new(Xx + k, Xy, Yy + k);

    public (double X, double Y) Times(double x, double y) => ((Xx * x) + (Xy * y), (Xy * x) + (Yy * y));

    public double Quadratic(double x, double y) => (Xx * x * x) + (2 * Xy * x * y) + (Yy * y * y);
}
