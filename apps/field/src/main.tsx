import { createRoot } from 'react-dom/client';
import { App } from './App.tsx';
import './look/tokens.css';
import './look/base.css';
import './look/parts.css';
import './look/screens.css';
import './look/decision.css';
import './look/list.css';
import './look/report.css';

const root = document.getElementById('root');
if (!root) throw new Error('The page has no place for the app.');
createRoot(root).render(<App />);
