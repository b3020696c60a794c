namespace GaitSeat.Studio;

/// <summary>Takes the parts of the pair one by one, from the far side to the near, and puts them into the picture.</summary>
internal interface IScene
{
    /// <summary>Lays a part between two joints, each in the rider's plane and so far towards the camera.</summary>
    /// <param name="length">Distance of the joints in the part, m.</param>
    /// <param name="size">Stretch across, 1 for parts drawn in true size.</param>
    /// <param name="dim">1 in full light; less for the far side.</param>
    void Draw(Part part, PlanePoint first, double firstNear, PlanePoint second, double secondNear, float length, float size, float dim);

    /// <summary>After the last part.</summary>
    void Finish();
}
