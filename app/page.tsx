export default function FrontDoor() {
  return <main>Benchleaf</main>;
}
