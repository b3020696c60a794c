using GaitSeat.Vision.Models;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Pipeline.Clips;

/// <summary>The first body-point model: the built-in one, or the user's own where the settings name it.</summary>
internal sealed class FirstModel
{
    private readonly UserModel? _user;

    private FirstModel(ModelFile file, UserModel? user) => (File, _user) = (file, user);

    public ModelFile File { get; }

    /// <exception cref="ModelException">The model cannot be used; for a user's own the message names the key, the file and the forms allowed.</exception>
    public static FirstModel Open(BodyPointSettings settings, ModelStore models)
    {
        if (settings.UserModel is not { Length: > 0 } path) return new(models.Ensure(ModelCatalogue.MoveNetThunder), null);
        try
        {
            var user = UserModel.Open(path);
            return new(user.File, user);
        }
        catch (ModelException e)
        {
            throw new ModelException($"body_points.user_model: {e.Message}; without this setting the built-in model is used", e);
        }
    }

    public BodyPointReader Reader(ModelFile torso, BodyPointSettings settings, int workers, InferenceDevice device) =>
        _user is null ? new(File, torso, settings, workers, device) : new(_user, torso, settings, workers, device);
}
